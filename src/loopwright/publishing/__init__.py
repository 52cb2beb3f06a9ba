"""What is handed to makers: a document of words, tables and drawings, and the pages, web page, book and text made of it."""
