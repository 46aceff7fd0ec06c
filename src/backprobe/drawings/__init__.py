"""Pictures as SVG strings, the same on page and paper."""
