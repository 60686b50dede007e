//! Exact numbers at the limits of what they hold: sums say that they cannot be held, and comparisons
//! are always right.

use std::cmp::Ordering;

use notchbook::measure::{Exact, down_to, ratio, round_to, square_root, to_f64, up_to};
use proptest::prelude::{Strategy, any, prop_assert, prop_assert_eq, prop_oneof, proptest};
use proptest::sample::select;
use proptest::test_runner::Config;

use crate::exact;

/// Parts of numbers, as often at the limits as between them.
fn a_part() -> impl Strategy<Value = i128> {
    let limits = vec![
        0,
        1,
        -1,
        2,
        3,
        -7,
        i128::MAX,
        i128::MAX - 1,
        -i128::MAX,
        i128::MAX / 2,
        1 << 64,
    ];
    prop_oneof![
        any::<i128>(),
        any::<i64>().prop_map(i128::from),
        select(limits)
    ]
}

fn a_huge_number() -> impl Strategy<Value = Exact> {
    (a_part(), a_part()).prop_filter_map("a ratio", |(numer, denom)| ratio(numer, denom))
}

/// The product of two numbers without loss: sign, upper and lower half.
fn product(one: i128, other: i128) -> (bool, u128, u128) {
    let half = |part: u128| (part >> 64, part & u128::from(u64::MAX));
    let ((a, b), (c, d)) = (half(one.unsigned_abs()), half(other.unsigned_abs()));
    let (low, middle, cross) = (b * d, a * d, b * c);
    let carried = (low >> 64) + half(middle).1 + half(cross).1;
    let upper = a * c + half(middle).0 + half(cross).0 + half(carried).0;
    let lower = (half(carried).1 << 64) | half(low).1;
    ((one < 0) != (other < 0) && upper | lower != 0, upper, lower)
}

/// Cross-multiplied, as at school.
fn by_products(one: Exact, other: Exact) -> Ordering {
    let (left, right) = (
        product(one.numer(), other.denom()),
        product(other.numer(), one.denom()),
    );
    let size = |whole: (bool, u128, u128)| (whole.1, whole.2);
    match (left.0, right.0) {
        (true, true) => size(right).cmp(&size(left)),
        (false, false) => size(left).cmp(&size(right)),
        (below, _) => {
            if below {
                Ordering::Less
            } else {
                Ordering::Greater
            }
        }
    }
}

proptest! {
    #![proptest_config(Config { failure_persistence: None, ..Config::with_cases(5000) })]

    #[test]
    fn comparisons_are_right_at_any_size(one in a_huge_number(), other in a_huge_number()) {
        prop_assert_eq!(one.cmp(&other), by_products(one, other));
        prop_assert_eq!(one == other, by_products(one, other) == Ordering::Equal);
    }

    #[test]
    fn sums_are_right_or_not_held(one in a_huge_number(), other in a_huge_number()) {
        let near = |held: Option<Exact>, drawn: f64, scale: f64| {
            held.is_none_or(|held| (to_f64(held) - drawn).abs() <= 1e-9 * scale.max(drawn.abs()))
        };
        let (a, b) = (to_f64(one), to_f64(other));
        prop_assert!(near(one.checked_add(other), a + b, a.abs() + b.abs()));
        prop_assert!(near(one.checked_sub(other), a - b, a.abs() + b.abs()));
        prop_assert!(near(one.distance(other), (a - b).abs(), a.abs() + b.abs()));
        prop_assert!(near(one.checked_mul(other), a * b, 0.0));
        prop_assert!(near(one.checked_div(other), a / b, 0.0));
        if let Some(sum) = one.checked_add(other) {
            prop_assert_eq!(sum.cmp(&one), other.cmp(&Exact::ZERO));
        }
    }

    #[test]
    fn signs_and_steps_do_no_harm(value in a_huge_number(), step in a_huge_number()) {
        prop_assert_eq!(-(-value), value);
        prop_assert_eq!(value.abs(), value.max(-value));
        if let Some(up) = up_to(value, step) {
            prop_assert!(up >= value);
        }
        if let Some(down) = down_to(value, step) {
            prop_assert!(down <= value);
        }
        if let (Some(near), Some(up)) = (round_to(value, step), up_to(value, step)) {
            prop_assert!(near == up || down_to(value, step).is_none_or(|down| down == near));
        }
        if let Some(root) = square_root(value).and_then(|root| root.checked_mul(root)) {
            prop_assert!(root <= value);
        }
    }
}

#[test]
fn what_is_too_large_is_not_held() {
    let most = exact(i128::MAX, 1);
    let least = exact(1, i128::MAX);
    assert_eq!(most.checked_add(Exact::ONE), None);
    assert_eq!((-most).checked_sub(Exact::ONE), None);
    assert_eq!(most.checked_sub(-Exact::ONE), None);
    assert_eq!(most.distance(-most), None);
    assert_eq!(most.checked_mul(most), None);
    assert_eq!(least.checked_mul(least), None);
    assert_eq!(least.checked_div(most), None);
    assert_eq!(least.checked_add(most), None);
    assert_eq!(most.checked_div(Exact::ZERO), None);
    assert_eq!(ratio(i128::MIN, 1), None);
    assert_eq!(most.checked_mul(least), Some(Exact::ONE));
    assert_eq!(Exact::of::<-254, 10>(), exact(-127, 5));
    assert_eq!(Exact::of::<0, 10>(), Exact::ZERO);
}
