"""Sky: sun, wind chill; facts of nature that need no kit."""
