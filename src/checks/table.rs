//! The table of checks.

use crate::diag::Check;
use crate::faults;

use super::address_malformed;
use super::allowance_at_fold;
use super::allowance_contradicts;
use super::allowance_differs;
use super::allowance_missing;
use super::allowance_not_told;
use super::allowance_unusual;
use super::alt_missing;
use super::amount_too_small;
use super::attached_before_hem;
use super::basted_elsewhere;
use super::basted_not_caught;
use super::binding_not_closed;
use super::binding_too_long;
use super::binding_too_short;
use super::both_systems_disagree;
use super::bound_before_sewn;
use super::boxed_before_sewn;
use super::bracket_unclosed;
use super::care_too_hot;
use super::casing_not_open;
use super::casing_too_narrow;
use super::caught_too_short;
use super::caution_missing;
use super::child_as_adult;
use super::child_harm_advised;
use super::children_divided;
use super::claimed_safe;
use super::closed_zip_before_turning;
use super::cloth_folded_otherwise;
use super::cloth_left_out;
use super::colour_not_listed;
use super::contrast_too_low;
use super::copy_unused;
use super::cord_at_neck;
use super::corner_unclear;
use super::count_contradicts;
use super::curve_not_clipped;
use super::cut_count_differs;
use super::danger_advised;
use super::dart_left_open;
use super::date_not_recorded;
use super::direction_contradicts;
use super::display_name_twice;
use super::ease_negative;
use super::ease_shrinks;
use super::ease_too_large;
use super::edge_contradicts;
use super::edge_left_raw;
use super::edge_not_finished;
use super::edge_unknown;
use super::edition_not_recorded;
use super::edition_twice;
use super::editions_out_of_order;
use super::expectation_fails;
use super::expectation_idle;
use super::fabric_contradicts;
use super::fabric_unused;
use super::finish_contradicts;
use super::finished_as_cut;
use super::finished_size_differs;
use super::fold_contradicts;
use super::formula_jumps;
use super::fused_after_sewn;
use super::fused_to_two;
use super::fused_too_large;
use super::gap_not_closed;
use super::gap_not_left;
use super::gap_not_told;
use super::gap_too_long;
use super::gap_too_short;
use super::glue_contradicts;
use super::grading_jumps;
use super::grading_stalls;
use super::grain_across_fold;
use super::grain_off_piece;
use super::handed_unused;
use super::hands_alike;
use super::heading_skips;
use super::heat_unusual;
use super::hole_too_soon;
use super::holes_differ;
use super::holes_under_buttons;
use super::house_words_english;
use super::id_missing;
use super::id_twice;
use super::judge::Judge;
use super::language_unknown;
use super::letter_not_in_font;
use super::lines_marked_late;
use super::loose_measurement;
use super::mark_of_another;
use super::marked_too_late;
use super::never_attached;
use super::never_turned;
use super::no_tube;
use super::not_graded;
use super::not_pressed;
use super::notches_differ;
use super::notches_miscounted;
use super::nothing_to_close;
use super::notion_count_differs;
use super::notion_length_missing;
use super::notion_unused;
use super::one_system_alone;
use super::pad_too_large;
use super::pair_differs;
use super::picture_contradicts;
use super::picture_twice;
use super::piece_contradicts;
use super::piece_not_cut;
use super::piece_too_wide;
use super::piece_unused;
use super::pinned_after_sewn;
use super::pinned_otherwise;
use super::pinned_too_few;
use super::place_off_edge;
use super::plural_missing;
use super::prepared_too_late;
use super::question_idle;
use super::quilted_too_small;
use super::raw_outside;
use super::reference_typed;
use super::refers_ahead;
use super::round_differs;
use super::rounding_does_not_close;
use super::row_out_of_order;
use super::row_too_deep;
use super::seam_forgotten;
use super::seam_lengths_differ;
use super::seam_not_sewn_yet;
use super::second_figures_fall;
use super::sewn_not_reckoned;
use super::side_contradicts;
use super::sides_put_wrong;
use super::size_contradicts;
use super::slit_left_raw;
use super::step_empty;
use super::steps_unusual;
use super::stitch_missing;
use super::stitch_unusual;
use super::stitched_on_tube;
use super::stuffed_out_of_order;
use super::systems_mixed;
use super::tape_too_short;
use super::tape_too_wide;
use super::thing_not_listed;
use super::thread_missing;
use super::tool_missing;
use super::tool_not_listed;
use super::topstitched_before_sewn;
use super::turn_contradicts;
use super::turned_before_sewn;
use super::turned_too_soon;
use super::two_names;
use super::unfinished_words;
use super::unused_measurement;
use super::used_before_cut;
use super::video_times;
use super::wearer_contradicted;
use super::wearer_not_said;
use super::wearer_out_of_order;
use super::word_twice;
use super::work_twice;
use super::zip_not_graded;
use super::zip_too_short;

/// Every check, group by group.
pub static CHECKS: &[Judge] = &[
    Judge::elsewhere(&faults::FILE_UNREADABLE),
    Judge::elsewhere(&faults::FILE_EMPTY),
    Judge::elsewhere(&faults::YAML_UNREADABLE),
    Judge::elsewhere(&faults::NESTED_TOO_DEEP),
    Judge::elsewhere(&faults::DUPLICATE_KEY),
    Judge::elsewhere(&faults::KEY_UNKNOWN),
    Judge::elsewhere(&faults::KEY_MISSING),
    Judge::elsewhere(&faults::VALUE_UNREADABLE),
    Judge::elsewhere(&faults::NAME_TWICE),
    Judge::elsewhere(&faults::UNKNOWN_NAME),
    Judge::elsewhere(&faults::FORMULA_UNREADABLE),
    Judge::elsewhere(&faults::UNIT_MISMATCH),
    Judge::elsewhere(&faults::WRONG_ARGUMENTS),
    Judge::elsewhere(&faults::OUT_OF_RANGE),
    Judge::elsewhere(&faults::DECEIVING_LETTERS),
    Judge::elsewhere(&faults::DIVISION_BY_ZERO),
    Judge::elsewhere(&faults::NUMBER_TOO_LARGE),
    Judge::elsewhere(&faults::FORMULA_RING),
    Judge::elsewhere(&faults::SIZE_MISSING),
    Judge::elsewhere(&faults::SIZE_UNKNOWN),
    Judge::elsewhere(&faults::NO_STOCK_LENGTH),
    Judge::elsewhere(&faults::OUTLINE_WRONG),
    Judge::elsewhere(&faults::OVER_LIMIT),
    Judge::elsewhere(&faults::NOTCH_OFF_EDGE),
    Judge::elsewhere(&faults::OFF_PIECE),
    both_systems_disagree::CHECK,
    rounding_does_not_close::CHECK,
    expectation_fails::CHECK,
    unused_measurement::CHECK,
    not_graded::CHECK,
    zip_not_graded::CHECK,
    grading_stalls::CHECK,
    grading_jumps::CHECK,
    formula_jumps::CHECK,
    child_as_adult::CHECK,
    children_divided::CHECK,
    second_figures_fall::CHECK,
    wearer_contradicted::CHECK,
    wearer_out_of_order::CHECK,
    wearer_not_said::CHECK,
    cord_at_neck::CHECK,
    child_harm_advised::CHECK,
    care_too_hot::CHECK,
    ease_negative::CHECK,
    ease_shrinks::CHECK,
    edition_not_recorded::CHECK,
    edition_twice::CHECK,
    editions_out_of_order::CHECK,
    date_not_recorded::CHECK,
    address_malformed::CHECK,
    video_times::CHECK,
    language_unknown::CHECK,
    house_words_english::CHECK,
    display_name_twice::CHECK,
    allowance_unusual::CHECK,
    steps_unusual::CHECK,
    heat_unusual::CHECK,
    pair_differs::CHECK,
    cloth_left_out::CHECK,
    finished_as_cut::CHECK,
    round_differs::CHECK,
    expectation_idle::CHECK,
    Judge::elsewhere(&faults::FOR_UNREADABLE),
    Judge::elsewhere(&faults::OPTION_UNCLEAR),
    Judge::elsewhere(&faults::CHOICE_UNREADABLE),
    Judge::elsewhere(&faults::CHOICE_NOT_COVERED),
    Judge::elsewhere(&faults::REFERENCE_BROKEN),
    Judge::elsewhere(&faults::REFERENCE_LEFT_OUT),
    Judge::elsewhere(&faults::TERM_UNDEFINED),
    id_twice::CHECK,
    id_missing::CHECK,
    handed_unused::CHECK,
    loose_measurement::CHECK,
    claimed_safe::CHECK,
    caution_missing::CHECK,
    word_twice::CHECK,
    unfinished_words::CHECK,
    bracket_unclosed::CHECK,
    reference_typed::CHECK,
    two_names::CHECK,
    systems_mixed::CHECK,
    one_system_alone::CHECK,
    count_contradicts::CHECK,
    notches_miscounted::CHECK,
    side_contradicts::CHECK,
    piece_contradicts::CHECK,
    edge_contradicts::CHECK,
    fold_contradicts::CHECK,
    turn_contradicts::CHECK,
    plural_missing::CHECK,
    direction_contradicts::CHECK,
    glue_contradicts::CHECK,
    allowance_contradicts::CHECK,
    allowance_not_told::CHECK,
    size_contradicts::CHECK,
    fabric_contradicts::CHECK,
    cloth_folded_otherwise::CHECK,
    finish_contradicts::CHECK,
    colour_not_listed::CHECK,
    thing_not_listed::CHECK,
    gap_not_told::CHECK,
    lines_marked_late::CHECK,
    refers_ahead::CHECK,
    danger_advised::CHECK,
    tool_not_listed::CHECK,
    alt_missing::CHECK,
    picture_contradicts::CHECK,
    picture_twice::CHECK,
    Judge::elsewhere(&faults::FIGURE_MISSING),
    Judge::elsewhere(&faults::FIGURE_MISPLACED),
    Judge::elsewhere(&faults::MARKUP_NOT_PRINTED),
    step_empty::CHECK,
    question_idle::CHECK,
    heading_skips::CHECK,
    Judge::elsewhere(&faults::WORK_UNREADABLE),
    allowance_missing::CHECK,
    stitch_missing::CHECK,
    stitch_unusual::CHECK,
    tool_missing::CHECK,
    thread_missing::CHECK,
    piece_not_cut::CHECK,
    piece_unused::CHECK,
    copy_unused::CHECK,
    notion_unused::CHECK,
    notion_count_differs::CHECK,
    notion_length_missing::CHECK,
    tape_too_short::CHECK,
    tape_too_wide::CHECK,
    used_before_cut::CHECK,
    cut_count_differs::CHECK,
    edge_unknown::CHECK,
    seam_lengths_differ::CHECK,
    ease_too_large::CHECK,
    zip_too_short::CHECK,
    notches_differ::CHECK,
    allowance_differs::CHECK,
    fused_after_sewn::CHECK,
    fused_too_large::CHECK,
    topstitched_before_sewn::CHECK,
    not_pressed::CHECK,
    row_too_deep::CHECK,
    pinned_after_sewn::CHECK,
    work_twice::CHECK,
    boxed_before_sewn::CHECK,
    corner_unclear::CHECK,
    binding_too_short::CHECK,
    binding_too_long::CHECK,
    binding_not_closed::CHECK,
    bound_before_sewn::CHECK,
    dart_left_open::CHECK,
    hands_alike::CHECK,
    row_out_of_order::CHECK,
    holes_differ::CHECK,
    mark_of_another::CHECK,
    hole_too_soon::CHECK,
    slit_left_raw::CHECK,
    casing_not_open::CHECK,
    casing_too_narrow::CHECK,
    basted_not_caught::CHECK,
    caught_too_short::CHECK,
    stuffed_out_of_order::CHECK,
    pad_too_large::CHECK,
    gap_not_left::CHECK,
    gap_not_closed::CHECK,
    never_attached::CHECK,
    never_turned::CHECK,
    no_tube::CHECK,
    sides_put_wrong::CHECK,
    closed_zip_before_turning::CHECK,
    pinned_otherwise::CHECK,
    pinned_too_few::CHECK,
    fused_to_two::CHECK,
    holes_under_buttons::CHECK,
    turned_too_soon::CHECK,
    turned_before_sewn::CHECK,
    nothing_to_close::CHECK,
    basted_elsewhere::CHECK,
    stitched_on_tube::CHECK,
    attached_before_hem::CHECK,
    marked_too_late::CHECK,
    gap_too_short::CHECK,
    fabric_unused::CHECK,
    grain_across_fold::CHECK,
    edge_left_raw::CHECK,
    raw_outside::CHECK,
    seam_forgotten::CHECK,
    seam_not_sewn_yet::CHECK,
    prepared_too_late::CHECK,
    curve_not_clipped::CHECK,
    gap_too_long::CHECK,
    place_off_edge::CHECK,
    edge_not_finished::CHECK,
    finished_size_differs::CHECK,
    sewn_not_reckoned::CHECK,
    Judge::elsewhere(&faults::FIGURE_NOT_DRAWABLE),
    Judge::elsewhere(&faults::FIGURE_FORMULA),
    Judge::elsewhere(&faults::SCRIPT_IN_FIGURE),
    Judge::elsewhere(&faults::OUTSIDE_LINK),
    Judge::elsewhere(&faults::FONT_NOT_BUNDLED),
    Judge::elsewhere(&faults::CLASS_UNKNOWN),
    Judge::elsewhere(&faults::LABEL_TOO_SMALL),
    Judge::elsewhere(&faults::LABEL_DIFFERS),
    Judge::elsewhere(&faults::FIGURE_CUT_OFF),
    Judge::elsewhere(&faults::FIGURE_TOO_WIDE),
    letter_not_in_font::CHECK,
    piece_too_wide::CHECK,
    amount_too_small::CHECK,
    quilted_too_small::CHECK,
    allowance_at_fold::CHECK,
    grain_off_piece::CHECK,
    contrast_too_low::CHECK,
    Judge::elsewhere(&faults::TYPESETTING_FAILED),
    Judge::elsewhere(&faults::TYPESETTING_DOUBTFUL),
    Judge::elsewhere(&faults::SHOP_TEXT_TOO_LONG),
    Judge::elsewhere(&faults::FILE_TOO_LARGE),
    Judge::elsewhere(&faults::EDITION_NOT_RAISED),
    Judge::elsewhere(&faults::MANIFEST_UNREADABLE),
    Judge::elsewhere(&faults::WAIVER_UNUSED),
    Judge::elsewhere(&faults::WAIVER_WITHOUT_REASON),
];

/// The check of that name.
pub fn by_code(code: &str) -> Option<&'static Check> {
    CHECKS.iter().map(|judge| judge.check).find(|check| check.code == code)
}
