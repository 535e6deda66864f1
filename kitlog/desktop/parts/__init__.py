"""Parts: the small widgets that the pages are made of. They know colours and words, never the workbench."""
