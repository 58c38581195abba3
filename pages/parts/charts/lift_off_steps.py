"""The strengths of lifting off as steps from rolling on to strong, with what is advised and what is set on them."""

from __future__ import annotations

from model.lift_off.advice import Advice
from model.lift_off.curves import STRENGTHS_MPS2
from model.lift_off.slowing import word_of
from model.words.quantities import Display
from pages.parts.charts.marks import CARD_LINE_PX, Box, Words, drawn
from pages.parts.lift_off_words import strength_word
from pages.parts.theme import LINE_PX, Spec

WORDS = dict.fromkeys(word_of(float(strength)) for strength in STRENGTHS_MPS2)
STEPS = dict(zip(WORDS, (4, 27, 50, 73), strict=True))
"""How high the step of each word is drawn [px]: they tell an order, not an amount."""
BETWEEN_PX, FOOT_PX, GAP = 4, 24, 0.05


def lift_off_steps(
    advice: Advice, set_mps2: float, display: Display, dark: bool = False, large: bool = False
) -> Spec:
    """Four steps; the advised one is the driver's, in ink, and over each stands what asks for it."""
    named: dict[str, list[str]] = {word: [] for word in STEPS}
    named[advice.word].append(display.say("steps-advised"))
    for there in advice.slippery:
        named[there.word].append(display.say("road-name", surface=there.road))
    named[word_of(set_mps2)].append(display.say("steps-set"))
    line_px = CARD_LINE_PX if large else LINE_PX
    ground = max(high + BETWEEN_PX + line_px * len(named[word]) for word, high in STEPS.items())
    boxes, words = [], []
    for place, (word, high) in enumerate(STEPS.items()):
        boxes.append(Box(place, place + 1 - GAP, ground - high, ground, "ink" if word == advice.word else "road"))
        middle = place + (1 - GAP) / 2
        # one under the other: side by side they would lie over the next step on a telephone
        lines = len(named[word]) - 1
        if named[word]:
            y = ground - high - line_px / 2 - 2 - lines * line_px
            words.append(Words("\n".join(named[word]), middle, y, "center", bold=word == advice.word))
        words.append(Words(strength_word(word, display), middle, ground + FOOT_PX / 2 + 2, "center"))
    return drawn(boxes, words, ground + FOOT_PX, len(STEPS), dark, large=large)
