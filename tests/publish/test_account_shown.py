"""The page that says who says so stays small however many vehicles there are: it shows what is least known, and says where all of it is."""

from datetime import date

from undertrim.derive.evidence.account import Account, Shares, Told
from undertrim.derive.fact_names import FactName
from undertrim.publish.encoding import said
from undertrim.publish.facts import account
from undertrim.publish.web import pages

VENT = Told("parts/vent/takes", FactName(("Upper vent",), ("time",)))


def accounts(number: int) -> list[Account]:
    """Vehicles of which the later ones are known less."""
    return [
        Account(f"brindleway/otter-{place}", Shares(number, number - place, 0, 0, 0, 1), [], [VENT], {})
        for place in range(number)
    ]


def test_a_page_shows_what_is_least_known_and_says_what_it_leaves_out() -> None:
    whole = account.report(accounts(9), date(2026, 6, 1))
    few = account.for_a_page(whole, 4)
    assert [one.vehicle[-1] for one in few.vehicles] == ["8", "7", "6", "5"]
    assert len(few.one_word) == 4
    page = pages.evidence(said(few))
    assert "Of each list the first 4 are shown." in page
    assert page.count("brindleway/otter-8") == 2  # where it leads, and what it is called
    assert "<li>Upper vent: time <small><code>parts/vent/takes</code></small></li>" in page
    assert account.for_a_page(whole).left_out == ""
    assert len(account.for_a_page(whole).vehicles) == 9
