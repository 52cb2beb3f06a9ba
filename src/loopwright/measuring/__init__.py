"""What the fabric is as a thing: how big, how it lies, its shape, its yarn, its time. Takes model data and gauge; gives measures."""
