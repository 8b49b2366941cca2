"""A reading drawn over its limits stands where its numbers say."""

from __future__ import annotations

import pytest

from app.drawings.span_scale import ACROSS, INSIDE, OUTSIDE, span_scale
from app.drawings.svg import TEXT, WIDTH
from app.report.report import Finding, Measured
from tests.drawings.read_back import ReadBack, ends, numbers_in, place_of, read_back
from tests.report.bikes import BIKES, report_on


def finding(measured: Measured | None, unit: str = "mm") -> Finding:
    return Finding(
        "dropout_width", "Dropout width suits the axle set", "axle", "close", "cantTell", "B", "", "", "", "",
        (), (), unit=unit, measured=measured,
    )  # fmt: skip


def drawn(measured: Measured, unit: str = "mm") -> ReadBack:
    drawing = span_scale(finding(measured, unit))
    assert drawing
    return read_back(drawing)


def bar(scale: ReadBack) -> tuple[float, float]:
    (box,) = scale.of_class("drawing__reading")
    left = float(box.attrib["x"])
    return left, left + float(box.attrib["width"])


def all_scales() -> dict[str, ReadBack]:
    """The scale of every finding with limits that the demo bikes get."""
    found = {}
    for name in BIKES:
        best = report_on(name).best
        assert best
        for each in best.findings:
            if (drawing := span_scale(each)) is not None:
                found[f"{name} {each.rule_id}"] = read_back(drawing)
    return found


def test_a_reading_across_a_limit_crosses_it_on_paper() -> None:
    scale = drawn(Measured((134_100, 135_100), (135_000, 135_000), (136_000, 136_000), 1))
    low, high = (ends(each)[0][0] for each in scale.of_class("drawing__limit"))

    left, right = bar(scale)

    assert left < low < right < high
    assert (right - left) / scale.scale == pytest.approx(1.0, abs=0.01)
    assert (high - low) / scale.scale == pytest.approx(1.0, abs=0.01)
    assert (low - left) / scale.scale == pytest.approx(0.9, abs=0.01)
    assert ACROSS in scale.text("desc")


@pytest.mark.parametrize(
    ("reading", "told"),
    [
        pytest.param((135_100, 135_700), INSIDE, id="well inside"),
        pytest.param((135_000, 136_000), INSIDE, id="exactly to the limits"),
        pytest.param((134_300, 134_900), OUTSIDE, id="just outside"),
        pytest.param((134_500, 135_000), ACROSS, id="touching a limit"),
        pytest.param((134_000, 137_000), ACROSS, id="wider than the limits"),
    ],
)
def test_the_description_says_how_the_reading_lies(reading: tuple[int, int], told: str) -> None:
    scale = drawn(Measured(reading, (135_000, 135_000), (136_000, 136_000), 1))

    assert scale.text("desc").endswith(told)


def test_the_description_names_the_reading_and_both_limits() -> None:
    scale = drawn(Measured((134_100, 135_100), (135_000, 135_000), (136_000, 136_000), 1))

    assert numbers_in(scale.text("desc")) == [134.6, 0.5, 135.0, 136.0]


def test_a_limit_with_a_tolerance_has_a_dashed_end() -> None:
    scale = drawn(Measured((30_000, 31_000), (28_000, 29_000), None, 1))
    (sure,), (possible,) = scale.of_class("drawing__limit"), scale.of_class("drawing__hidden")

    assert (ends(possible)[0][0] - ends(sure)[0][0]) / scale.scale == pytest.approx(1.0, abs=0.01)


def test_equal_limits_are_written_once() -> None:
    scale = drawn(Measured((28_000, 28_000), (32_000, 32_000), (32_000, 32_000), 0), unit="")

    assert [each.text for each in scale.words()].count("32") == 1


def test_a_finding_without_numbers_has_no_scale() -> None:
    assert span_scale(finding(None)) is None
    assert span_scale(finding(Measured((1_000, 2_000), None, None, 1))) is None


def test_every_number_of_the_demo_bikes_stays_on_the_paper_and_clear_of_the_others() -> None:
    scales = all_scales()

    assert len(scales) > 400
    for name, scale in scales.items():
        places = [place_of(each) for each in scale.words()]
        assert all(left >= 0 and right <= WIDTH for left, right, _ in places), name
        for number, (left, right, base) in enumerate(places):
            beside = [other for other in places[number + 1 :] if abs(other[2] - base) < TEXT]
            assert all(right < other[0] or other[1] < left for other in beside), name


def test_every_reading_of_the_demo_bikes_is_drawn_as_long_as_it_is_wide() -> None:
    for name, scale in all_scales().items():
        left, right = bar(scale)

        assert 0 <= left <= right <= WIDTH, name
