"""Small SVG drawings of our own, made from data: fastener heads, clips and tethers, wires, panels.

Every drawing stands alone: one string, no ids, styles, scripts or references. Lines and areas take
`currentColor`, so they follow the text colour of the page and print black; only wires have their own colours.
"""
