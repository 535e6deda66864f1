"""The page Kit: table, filters, details, editors."""
