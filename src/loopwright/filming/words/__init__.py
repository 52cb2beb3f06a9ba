"""Words of plans and cards, one TOML a language."""
