"""Choices that several kinds of element share: finishes, treatments, seasoning, grounds, metals."""

SEASONING = {
    "green": "not dried",
    "air-dried": "dried in stacks in the open",
    "kiln-dried": "dried in a kiln",
    "standing dead": "cut from trees dead some years",
}
FINISHES = {
    "water repellent": "a clear water-repellent preservative",
    "tinted clear": "a lightly pigmented penetrating finish",
    "semitransparent stain": "a pigmented penetrating stain",
    "solid stain": "an opaque stain that forms a film",
    "paint": "primer and paint",
    "clear film": "varnish or another clear film",
    "none": "bare wood",
}
COLOURS = {"light": "pale", "medium": "mid tones", "dark": "dark brown to black"}
SHEENS = {"flat": "no shine", "satin": "some shine", "gloss": "full shine"}
WOOD_SURFACES = {
    "planed": "milled or planed smooth",
    "sawn": "as it left the saw, or textured",
    "hand-hewn": "hewn with axe or adze",
    "peeled": "bark drawn off, the log left as it grew",
}
TREATMENTS = {
    "none": "untreated",
    "borate": "a borate treatment",
    "copper above ground": "copper-based, to the above-ground class (UC3B)",
    "copper ground contact": "copper-based, to the ground-contact class (UC4A)",
    "copper heavy duty": "copper-based, to the heavy-duty ground-contact class (UC4B)",
}
HEARTWOOD = {"heartwood": "heartwood only, graded so", "mixed": "heartwood and sapwood", "sapwood": "mostly sapwood"}
SURFACES = {
    "bare soil": "earth",
    "lawn": "grass",
    "mulch": "bark or other organic mulch",
    "washed stone": "rounded stone, 3/4 to 1 1/4 in, at least 6 in deep",
    "gravel": "angular or shallow gravel",
    "paving": "a slab, pavers or asphalt",
    "decking": "deck or porch boards",
}
METALS = {
    "stainless": "stainless steel 304 or 316",
    "hot-dip galvanized": "hot-dip galvanized steel",
    "electroplated": "electroplated or thinly coated steel",
    "plain steel": "uncoated steel",
    "copper": "copper",
    "aluminium": "aluminium",
    "silicon bronze": "silicon bronze",
}
CAPS = {
    "metal": "a metal cap with a drip",
    "board": "a sacrificial board with an air gap",
    "bevel": "a top sloped 15 degrees or more",
    "membrane": "a strip of membrane with a drip",
    "none": "a flat bare top",
}
ENDS = {
    "sealed": "end sealer or flood coats",
    "capped": "a metal cap",
    "none": "bare end grain",
}
