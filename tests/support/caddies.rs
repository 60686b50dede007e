//! A pattern of two things that share a part: a flat sleeve in two sizes and a boxed caddy in one.

/// The files of the booklet.
pub const CADDIES: [(&str, &str); 4] = [
    ("booklet.yaml", FACTS),
    ("cut.md", CUT),
    ("body.md", BODY),
    ("base.md", BASE),
];

const FACTS: &str = "\
title: Peg Caddies
edition: 1.0.0
sizes: {short: Short, tall: Tall, deep: One size}
views:
  sleeve: {name: Flat sleeve, sizes: [short, tall]}
  caddy: {name: Deep caddy, sizes: [deep]}
booklets: [sizes, views, all]
measurements:
  seam: 1 cm (3/8 in)
  width: {sleeve: [12 cm (4 3/4 in), 15 cm (5 7/8 in)], caddy: 10 cm (4 in)}
  height: {short: 14 cm (5 1/2 in), tall: 20 cm (7 7/8 in), caddy: 12 cm (4 3/4 in)}
  depth: {caddy: 6 cm (2 3/8 in)}
finished:
  Width: {sleeve: width, caddy: width - depth}
  Depth of the base: {value: depth, for: caddy, sewn: front.depth}
fabrics:
  outer: {name: Canvas, widths: [112 cm (44 in)]}
  felt: {name: Felt, widths: [90 cm (36 in)], for: caddy}
notions:
  thread: {kind: thread, name: All-purpose thread}
pieces:
  flat:
    name: Sleeve body
    for: sleeve
    outline: {rectangle: [width + 2 * seam, height + 2 * seam]}
    allowance: seam
    grain: vertical
    cut: {outer: [front, back]}
  boxed:
    name: Caddy body
    for: caddy
    outline:
      rectangle: [width + 2 * seam, height + depth / 2 + 2 * seam]
      corners_out: {bottom: [depth / 2, depth / 2]}
    allowance: seam
    grain: vertical
    cut: {outer: [front, back]}
  tag:
    name: Tag
    outline: {rectangle: [6 cm (2 3/8 in), 4 cm (1 5/8 in)]}
    raw: all
    cut: {outer: {sleeve: 1, caddy: [front_tag, back_tag]}}
  lining:
    name: Base lining
    for: caddy
    sheet: no
    outline: {rectangle: [40 cm (15 3/4 in), 28 cm (11 in)]}
    notches: [top centre]
    raw: all
    cut: {felt: 1}
words:
  right sides together: With the sides that will show in the end facing each other.
editions:
  - {edition: 1.0.0, changes: First edition.}
parts:
  - cut.md
  - {file: body.md, with: {main: front, other: back}}
  - {file: base.md, for: caddy}
";

const CUT: &str = "\
# Cut

## Cut the pieces {#cut}

```work
- cut: all
```

Cut {sleeve: one tag | caddy: two tags}.
";

const BODY: &str = "\
# Sew the body

## Hem and join {#join}

```work
- {topstitch: [tag, main], stitch: 3 mm}
- {hem: [main.top, other.top], allowance: seam, stitch: 2.5 mm}
- {sew: [main.left, other.left], allowance: seam, stitch: 2.5 mm}
- {sew: [main.right, other.right], allowance: seam, stitch: 2.5 mm}
- {sew: [main.bottom, other.bottom], allowance: seam, stitch: 2.5 mm}
- press: [main, other, along the seams]
```

Hem the tops, {main.top} long, and sew the sides and the base [](term:right sides together).

![The bodies with the seams of their sides](figures/body.svg)
";

const BASE: &str = "\
# Shape the base

## Box the corners {#corners}

```work
- {box: [front.bottom_left_corner, back.bottom_left_corner], allowance: seam, stitch: 2.5 mm}
- {box: [front.bottom_right_corner, back.bottom_right_corner], allowance: seam, stitch: 2.5 mm}
- attach: [lining, front]
```

Lay the base seam on the side seam, sew across each corner, and lay the lining in.

## Turn it out {#turn}

```work
- turn: [front, right side out]
- press: [front, along the seams]
```

Turn it right side out and press it.
";

/// The diagram of the bodies, which every size has at its own measures.
pub const FIGURE: (&str, &str) = (
    "figures/body.svg",
    r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 60 60" width="60mm" data-scale="1:5">
  <rect class="wrong-side" x="4" y="4" width="{width + 2 * seam}" height="{height + 2 * seam}"/>
  <text class="label" x="6" y="56">{width}</text>
</svg>
"#,
);
