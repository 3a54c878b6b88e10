"""Work on many files at once, in processes of their own: one file that hangs, swells or crashes costs that file alone."""
