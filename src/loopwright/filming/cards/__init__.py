"""Cards that stand on the picture: SVG with a clear ground, 16:9 and 9:16, nothing of them where captions stand."""
