"""The Stilepost server: plan, journal, forecast, watch and the doors to them."""
