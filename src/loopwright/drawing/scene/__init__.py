"""The relaxed fabric as a thing to look at: triangles, binary glTF, a picture, and forms to wear it on. Needs numpy."""
