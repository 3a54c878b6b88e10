"""What a browser shows: pages, their scripts, and the site around them."""
