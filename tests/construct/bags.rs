//! Boxed bags: the finished sizes, from closed forms of plane geometry.
//!
//! A bag is to be w wide at the base, d deep and h high, sewn from two rectangles with the allowances a
//! at the sides, b at the base, t at the top and x at the boxed corners. From the base's stitching line
//! the half depth goes up each side, and from the side's stitching line it goes in along the base, to
//! where the corner's seam lies x beyond the cut. So what is cut out at each corner is d/2 + a − x
//! across and d/2 + b − x up, and the rectangle is w + 2 (d/2 + a) wide and t + h + (d/2 + b) high.

use notchbook::construct::sewn;
use notchbook::resolve::{PieceId, SewnMeasure};
use proptest::prelude::{ProptestConfig, Strategy, prop_assert, prop_assert_eq, proptest};

use crate::{codes, sewn_up};

/// All in mm.
#[derive(Debug, Clone, Copy)]
struct Bag {
    width: f64,
    depth: f64,
    height: f64,
    side: f64,
    base: f64,
    top: f64,
    corner: f64,
}

/// Halves of a millimetre, written exactly in decimals and as binary numbers.
fn halves(from: u32, to: u32) -> impl Strategy<Value = f64> {
    (2 * from..=2 * to).prop_map(|halves| f64::from(halves) / 2.0)
}

fn bags() -> impl Strategy<Value = Bag> {
    let sizes = (halves(60, 600), halves(60, 300), halves(50, 700));
    let allowances = (halves(3, 20), halves(3, 20), halves(0, 40), halves(3, 20));
    (sizes, allowances).prop_map(|((width, depth, height), (side, base, top, corner))| Bag {
        width,
        depth,
        height,
        side,
        base,
        top,
        corner,
    })
}

impl Bag {
    /// What is cut out at each lower corner: across and up.
    fn cut_out(&self) -> (f64, f64) {
        let half = self.depth / 2.0;
        (
            half + self.side - self.corner,
            half + self.base - self.corner,
        )
    }

    /// The piece, what is cut out of it given.
    fn piece(&self, (across, up): (f64, f64)) -> String {
        let Bag {
            width,
            depth,
            height,
            side,
            base,
            top,
            corner,
        } = *self;
        let half = depth / 2.0;
        let (wide, high) = (width + 2.0 * (half + side), top + height + half + base);
        format!(
            "  body:\n    outline: {{rectangle: [{wide} mm, {high} mm], corners_out: {{bottom: [{across} mm, {up} mm]}}}}\n    \
             allowance: {{left: {side} mm, right: {side} mm, bottom: {base} mm, top: {top} mm, \
             bottom_left_corner: {corner} mm, bottom_right_corner: {corner} mm}}\n    cut: {{outer: [front, back]}}\n"
        )
    }

    /// The same piece with its stitching line drawn: the allowances are added to it.
    fn piece_as_sewn(&self) -> String {
        let Bag {
            width,
            depth,
            height,
            side,
            base,
            top,
            corner,
        } = *self;
        let half = depth / 2.0;
        let (wide, high) = (width + depth, height + half);
        format!(
            "  body:\n    drawn: stitching\n    outline: {{rectangle: [{wide} mm, {high} mm], corners_out: {{bottom: [{half} mm, {half} mm]}}}}\n    \
             allowance: {{left: {side} mm, right: {side} mm, bottom: {base} mm, top: {top} mm, \
             bottom_left_corner: {corner} mm, bottom_right_corner: {corner} mm}}\n    cut: {{outer: [front, back]}}\n"
        )
    }

    fn work(&self) -> Vec<String> {
        let Bag {
            side,
            base,
            top,
            corner,
            ..
        } = *self;
        let fact = |verb: &str, touched: &str, allowance: f64| {
            format!("- {verb}: [{touched}]\n  allowance: {allowance} mm\n  stitch: 2.5 mm\n")
        };
        vec![
            "- cut: all\n".to_owned(),
            fact("sew", "front.left, back.right", side)
                + &fact("sew", "front.right, back.left", side),
            fact("sew", "front.bottom, back.bottom", base),
            fact(
                "box",
                "front.bottom_left_corner, back.bottom_right_corner",
                corner,
            ) + &fact(
                "box",
                "front.bottom_right_corner, back.bottom_left_corner",
                corner,
            ),
            fact("hem", "front.top, back.top", top),
        ]
    }

    /// The same piece with no corner cut out, and the work that boxes it by measuring.
    fn by_measuring(&self) -> (String, Vec<String>) {
        let uncut = self.piece((1.0, 1.0));
        let piece = uncut.replace(", corners_out: {bottom: [1 mm, 1 mm]}", "");
        let (start, _) = piece.split_once(", bottom_left_corner").expect("corners");
        let piece = format!("{start}}}\n    cut: {{outer: [front, back]}}\n");
        let up = self.depth / 2.0;
        let corner = |one: &str, other: &str| {
            format!(
                "- box: [front.{one}, front.bottom, back.{other}, back.bottom]\n  up: {up} mm\n  stitch: 2.5 mm\n"
            )
        };
        let mut work = self.work();
        work[3] = corner("left", "right") + &corner("right", "left");
        (piece, work)
    }

    /// What the construction says: width, height, depth.
    fn measured(&self, piece: &str) -> [Option<f64>; 3] {
        self.measured_as(piece, &self.work())
    }

    fn measured_as(&self, piece: &str, work: &[String]) -> [Option<f64>; 3] {
        sewn_up("", piece, work, |compiled| {
            let (edition, history) = (&compiled.editions()[0], &compiled.histories()[0]);
            [SewnMeasure::Width, SewnMeasure::Height, SewnMeasure::Depth]
                .map(|measure| sewn(edition, history, "front", measure))
        })
    }
}

fn near(found: Option<f64>, wanted: f64) -> bool {
    found.is_some_and(|found| (found - wanted).abs() < 1e-6)
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(96) })]

    #[test]
    fn a_boxed_bag_is_as_large_as_it_was_meant(bag in bags()) {
        let [width, height, depth] = bag.measured(&bag.piece(bag.cut_out()));
        prop_assert!(near(width, bag.width), "{width:?} wide: {bag:?}");
        prop_assert!(near(height, bag.height), "{height:?} high: {bag:?}");
        prop_assert!(near(depth, bag.depth), "{depth:?} deep: {bag:?}");
    }

    /// Nor does it matter which of its lines is drawn.
    #[test]
    fn a_bag_drawn_by_its_stitching_line_is_as_large(bag in bags()) {
        let [width, height, depth] = bag.measured(&bag.piece_as_sewn());
        prop_assert!(near(width, bag.width), "{width:?} wide: {bag:?}");
        prop_assert!(near(height, bag.height), "{height:?} high: {bag:?}");
        prop_assert!(near(depth, bag.depth), "{depth:?} deep: {bag:?}");
    }

    /// A corner that is measured up its seams makes the bag that a square cut out makes.
    #[test]
    fn a_corner_measured_up_equals_one_cut_out(bag in bags()) {
        let (piece, work) = bag.by_measuring();
        let [width, height, depth] = bag.measured_as(&piece, &work);
        prop_assert!(near(width, bag.width), "{width:?} wide: {bag:?}");
        prop_assert!(near(height, bag.height), "{height:?} high: {bag:?}");
        prop_assert!(near(depth, bag.depth), "{depth:?} deep: {bag:?}");
    }

    /// The stitching lines of the piece say the same as the closed forms: the base seam is as long
    /// as the bag is wide.
    #[test]
    fn the_stitching_lines_agree(bag in bags()) {
        let (base, side) = sewn_up("", &bag.piece(bag.cut_out()), &bag.work(), |compiled| {
            let edition = &compiled.editions()[0];
            let (piece, _) = PieceId::each(&edition.draft.facts.pieces).next().expect("a piece");
            let shape = edition.values.shape(piece).expect("a shape");
            let length = |edge: &str| shape.edge(edge).map(|edge| edge.seam_length);
            (length("bottom"), length("left"))
        });
        prop_assert!(near(base, bag.width), "the base seam is {base:?}: {bag:?}");
        prop_assert!(near(side, bag.height), "the side seam is {side:?}: {bag:?}");
    }

    /// Where the two sides of a corner differ in length they cannot be sewn to each other flat, and no
    /// depth is told.
    #[test]
    fn a_crooked_corner_has_no_depth(bag in bags(), more in halves(1, 20)) {
        let (across, up) = bag.cut_out();
        let [width, height, depth] = bag.measured(&bag.piece((across, up + more)));
        prop_assert_eq!(depth, None);
        prop_assert!(near(width, bag.width), "{width:?} wide: {bag:?}");
        // The cut goes further up, and the bag is that much lower.
        prop_assert!(near(height, bag.height - more), "{height:?} high: {bag:?}");
    }

    /// A finished size that is stated as it is sewn is not found fault with; one that is out by more
    /// than a millimetre is.
    #[test]
    fn a_stated_size_is_held_against_the_sewing(bag in bags(), out in 3_u32..40, which in 0_usize..3) {
        let stated = |out: f64| {
            let mut sizes = [bag.width, bag.depth, bag.height];
            sizes[which] += out;
            let rows = ["width", "depth", "height"].iter().zip(sizes);
            let rows = rows.map(|(name, size)| format!("  Its {name}: {{value: {size} mm, sewn: front.{name}}}\n"));
            format!("finished:\n{}", rows.collect::<String>())
        };
        let told = |out: f64| {
            sewn_up(&stated(out), &bag.piece(bag.cut_out()), &bag.work(), |compiled| {
                codes(compiled).iter().filter(|code| **code == "finished-size-differs").count()
            })
        };
        prop_assert_eq!(told(0.0), 0);
        prop_assert_eq!(told(f64::from(out) / 2.0), 1);
    }
}
