"""Kit: items and their facets, pairs, service rules and due states, flights and hours."""
