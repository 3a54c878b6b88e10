"""Spreads a record that says each thing once into the whole shape, in which everything stands where it holds.

A record of format 2 is read as typed and spread here, once; what looks at records afterwards knows the whole alone, which is
what a record of format 1 says by itself. Each place of the whole keeps the line and column where its value was typed. What
may be said once stands in the schema (`shapes.py`); this is the walk over a record beside it.

Nothing here refuses a value: the whole goes through the schema like any other record. Only what cannot be spread is a fault.
"""

# Long because it is one walk: what is short, shared and left out meets at each place, and each may stand inside the others.

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType

from undertrim.record import along, dividing, implied, listing, redirecting, shapes, together
from undertrim.record.complaint import Complaint
from undertrim.record.dividing import Picked
from undertrim.record.examples import is_id
from undertrim.record.following import FOLLOWING, Following
from undertrim.record.forms import Form, Forms
from undertrim.record.nearness import suggestion
from undertrim.record.numerals import quoted
from undertrim.record.places import Places
from undertrim.record.refusals import refusals
from undertrim.record.sentences import write
from undertrim.record.shapes import Shape
from undertrim.record.sharing import Sharing, Sisters
from undertrim.record.source import Data, Origin, Pointer, Source, Twice
from undertrim.record.taken import Taken
from undertrim.record.together import Apart
from undertrim.words import Items, Message, message

SAYS_ONCE, SAYS_ALL = "2", "1"
"""The format that is spread, and the one of the whole."""

BACK = "none"
"""What a thing says of a field to take back what would be shared with it."""

_DEEP = 3
"""From so many steps on, a place in `shares` is a list or an entry of one, and no key."""

_NOTHING = Shape()

NOWHERE: Mapping[str, Pointer] = MappingProxyType({})


def spread(source: Source, sisters: Sisters | None = None) -> Source:
    """The source with its data as a whole, unless it is of the format that says all in each place; a format nobody knows is told, and read as the newest.

    What the record takes from others is laid in where `sisters` finds those; without, it is what the record says by itself.
    """
    if not isinstance(source.data, dict) or source.data.get("format") == SAYS_ALL:
        return source
    return _Spreading(source, Places(source)).made(sisters)


def is_earlier(source: Source) -> bool:
    """Whether a file is a vehicle record of the format in which everything is said in each place."""
    typed = source.as_typed.data
    return isinstance(typed, dict) and "vehicle" in typed and typed.get("format") == SAYS_ALL


@dataclass(slots=True)
class _Later:
    """An opening, whose area and sides are known once all parts are."""

    place: Pointer
    follows: shapes.Follows


@dataclass(slots=True)
class _Shared:
    """A field of a group: its value as typed, where that stands, and its shape."""

    value: Data
    typed: Pointer
    shape: Shape
    of_key: bool = False


@dataclass(slots=True)
class _Spreading:
    """One record on its way: the places of the whole, and what showed so far."""

    source: Source
    places: Places
    faults: list[Complaint] = field(default_factory=list)
    twice: list[Twice] = field(default_factory=list)
    later: list[_Later] = field(default_factory=list)
    followed: set[Pointer] = field(default_factory=set)
    taken: dict[Pointer, Taken] = field(default_factory=dict)
    forms: Forms = field(init=False)

    def __post_init__(self) -> None:
        self.forms = Forms(self.places, self.source.data, self.faults, _asked(self.source.data))

    def made(self, sisters: Sisters | None) -> Source:
        shape, data = shapes.whole("vehicle"), self.source.data
        for name in (name for name in shape.aside if name in data):
            self._blame(f"vehicle/{name}", _in_lists(shape.aside[name], data[name]), (name,))
        data = self.forms.undivided(shape)
        whole = self._mapping(shape, {key: value for key, value in data.items() if key not in shape.aside}, (), ())
        whole |= {"format": SAYS_ALL} if whole.get("format") == SAYS_ONCE else {}
        redirecting.lead(self.forms, shape, whole)
        sharing = self._take(whole, sisters) if sisters else None
        for item in self.later:
            for place in self.forms.standing(item.place):
                self._follow_parts(whole, _Later(place, item.follows))
        made = self.places
        origin = Origin(
            self.source,
            made.inherited,
            tuple(self.faults),
            tuple(self.twice),
            forms={**self.forms.ids, **(sharing.forms if sharing else {})},
            led=frozenset(self.forms.led),
            named_for=self.forms.named_for,
            taken=self.taken,
            sisters=tuple(sharing.used) if sharing else (),
        )
        quoted_too = frozenset(made.quoted)
        return replace(self.source, data=whole, values=made.values, keys=made.keys, quoted=quoted_too, origin=origin)

    def _take(self, whole: dict[str, Data], sisters: Sisters) -> Sharing:
        """Lay in what the record takes from others."""
        sharing = Sharing(whole, self.source, self.places, frozenset(self.followed))
        sharing.take(sisters)
        self.taken = sharing.taken
        self.forms.named_for |= sharing.named_for
        self.faults += [Complaint(place, said, key=len(place) < _DEEP) for place, said in sharing.faults]
        self.twice += sharing.twice
        return sharing

    def _whole(self, shape: Shape | None, value: Data, place: Pointer, typed: Pointer) -> Data:
        """What a value as typed stands for at a place of the whole."""
        self.places.note(place, typed)
        shape = shape or _NOTHING
        if place is typed and shape.plain:
            return value
        if isinstance(value, list):
            if shape.short_list:
                return self._short(shape, value, place, typed)
            return self._list(shape, [(inner, (*typed, i)) for i, inner in enumerate(value)], place)
        if value is not None and shape.is_list:
            return self._list(shape, [(value, typed)], place)
        if isinstance(value, dict):
            return self._mapping(shape, value, place, typed)
        if value is not None and shape.short_text:
            return self._from_fields(shape, {shape.short_text: (value, typed)}, place)
        return self._named(shape, value, place, typed) if value and shape.named else value

    def _mapping(self, shape: Shape, value: dict[str, Data], place: Pointer, typed: Pointer) -> dict[str, Data]:
        if not shape.varies or "when" not in value:
            return self._fields(shape, value, place, typed)
        cars = dividing.clauses(value["when"]) or {}
        with self.forms.within(cars, cars):
            return self._fields(shape, value, place, typed)

    def _fields(self, shape: Shape, value: dict[str, Data], place: Pointer, typed: Pointer) -> dict[str, Data]:
        made: dict[str, Data] = {}
        for key, inner in value.items():
            if isinstance(inner, Picked):
                if isinstance(inner.value, list) and key in shape.fields and shape.fields[key].also:
                    made |= self._along(shape, {**value, key: inner.value}, key, place, inner.typed)
                else:
                    self._picked(shape, made, (*place, key), inner)
            elif shape.group and isinstance(inner, dict) and place[-1] in inner:
                self._group(shape, made, key, inner, place)
            elif isinstance(inner, list) and key in shape.fields and shape.fields[key].also:
                made |= self._along(shape, value, key, place, (*typed, key))
            else:
                spot, origin = _below(place, typed, key)
                self._entry(shape, made, spot, inner, origin)
        self._follow(shape, made, place)
        return made

    def _along(self, shape: Shape, given: dict[str, Data], key: str, place: Pointer, typed: Pointer) -> dict[str, Data]:
        """The fields of a list that says one field with others beside it; `given` is all that the mapping says."""
        names, also, made = along.fields_of(given[key], key, shape.fields), shape.fields[key].also, {}
        if names is None:
            said = message("spread/along", name=key, most=len(also) + 1, names=Items((key, *also), "comma"))
            self.places.note_key((*place, key), typed)
            self.places.note((*place, key), typed)
            self.faults.append(Complaint((*place, key), said))
            return {key: given[key]}
        for i, name in enumerate(names):
            value = str(given[key][i])
            if i and name in given:
                self.faults.append(Complaint((*typed, i), message("spread/along-twice", field=name, name=key)))
                continue
            self.places.stand((*place, name), self.places.of((*typed, i)))
            made[name] = along.meant(shape.fields[name], value) if i else value
            if i and (listed := shape.fields[name].listed) and value not in listed:
                way_out = suggestion(value, list(listed), message("spread/words"))
                said = message("spread/no-such-word", value=quoted(value), name=key, hint=way_out)
                self.faults.append(Complaint((*place, name), said))
        return made

    def _list(self, shape: Shape, entries: list[tuple[Data, Pointer]], place: Pointer) -> Data:
        """The entries of a list; one that differs between cars stands there once for each kind."""
        made: list[Data] = []
        for entry, typed in entries:
            value = self._apart(shape.items, entry, (*place, len(made)), typed)
            forms = self.forms.of(shape, shape.items, value, typed) if shape.items else None
            for form in forms or ():
                made.append(self._form(shape.items, form, (*place, len(made))))
            if forms is None:
                spot = (*place, len(made))
                made.append(self._whole(shape.items, value, typed if spot == typed else spot, typed))
        return made

    def _entry(self, shape: Shape, made: dict[str, Data], place: Pointer, value: Data, typed: Pointer) -> list[str]:
        """What stands under one key, or in several forms under several; of two with one id the first is kept. The ids set down."""
        key, below = str(place[-1]), shape.below(str(place[-1]))
        value = self._apart(below, value, place, typed)
        forms = self.forms.of(shape, below, value, typed, key) if below else None
        if forms is None:
            if self._is_free(made, place, typed):
                self.places.note_key(place, typed)
                made[key] = self._whole(below, value, place, typed)
                return [key]
            return []
        spots = [(form, (*place[:-1], form.name)) for form in forms]
        free = [(form, spot) for form, spot in spots if self._is_free(made, spot, typed)]
        self.forms.note(place, forms)
        for form, spot in free:
            self.places.inherited[spot] = typed
            self.places.stand_key(spot, self.source.keys[typed])
            made[form.name] = self._form(below, form, spot)
            if shape.named_by and form.name != form.id and isinstance(made[form.name], dict):
                made[form.name].setdefault(shape.named_by, form.id)
                self.places.stand((*spot, shape.named_by), self.source.keys[typed])
        if place[0] == "openings":
            self.forms.label(made, place, forms)
        return [form.name for form, _ in free]

    def _apart(self, shape: Shape | None, value: Data, place: Pointer, typed: Pointer) -> Data:
        """A block with its fields beside each other, also those that stand together in a mapping or behind a key."""
        if shape and isinstance(value, dict) and shape.is_keyed(value) and together.is_wrong(shape, value):
            self.faults.append(Complaint(place, together.wrong(shape, value)))
            return next(iter(value.values()))
        made = together.apart(shape, value, typed)
        if made is None:
            return value
        self.faults += [Complaint(spot, said, key=True, stays=True, typed=True) for spot, said in made.faults]
        return made.picked

    def _is_free(self, made: dict[str, Data], place: Pointer, typed: Pointer) -> bool:
        if place[-1] in made:
            said = message("spread/id-twice", id=quoted(str(place[-1])), line=self.places.keys[place].line)
            self._fault(typed, said)
            return False
        return True

    def _form(self, shape: Shape | None, form: Form, place: Pointer) -> Data:
        """What a thing says of one kind of car."""
        with self.forms.within(form.cars, {}):
            made = self._whole(shape, form.block, place, form.typed)
        if isinstance(made, dict):
            self.forms.say_cars(made, place, form)
        return made

    def _picked(self, shape: Shape, made: dict[str, Data], place: Pointer, picked: Picked) -> None:
        """A value that stands elsewhere than its field."""
        if not picked.own:
            self.places.inherited[place] = picked.typed
        if picked.of_key:
            self.places.stand(place, self.source.position(picked.key, key=True))
            made[str(place[-1])] = picked.value
            return
        self.places.stand_key(place, self.source.position(picked.key, key=True))
        made[str(place[-1])] = self._whole(shape.below(str(place[-1])), picked.value, place, picked.typed)

    def _short(self, shape: Shape, value: list[Data], place: Pointer, typed: Pointer) -> Data:
        """A mapping that was typed as a list of its usual fields."""
        if not 0 < len(value) <= len(shape.short_list):
            said = listing.too_many(shape.title, shape.short_list, value)
            self.faults.append(Complaint(place, said))
            return value
        fields = zip(shape.short_list, enumerate(value), strict=False)
        return self._from_fields(shape, {name: (inner, (*typed, i)) for name, (i, inner) in fields}, place)

    def _from_fields(self, shape: Shape, fields: dict[str, tuple[Data, Pointer]], place: Pointer) -> dict[str, Data]:
        made: dict[str, Data] = {}
        for name, (value, typed) in fields.items():
            self.places.stand((*place, name), self.places.of(typed))
            made[name] = self._whole(shape.fields[name], value, (*place, name), typed)
        self._follow(shape, made, place)
        return made

    def _named(self, shape: Shape, value: str, place: Pointer, typed: Pointer) -> Data:
        """What stands under an id in a section of its own; any other text is itself, unless it looks like such an id."""
        section = self.source.data.get(shape.named)
        known = section if isinstance(section, dict) else {}
        if value in known:
            self.places.inherited[place] = (shape.named, value)
            return self._whole(replace(shape, named=""), known[value], place, (shape.named, value))
        if is_id(value) and not value.isdecimal():
            way_out = suggestion(value, list(known), message("spread/cars")) if known else message("spread/no-cars")
            said = message("spread/unnamed", id=quoted(value), section=shape.named, hint=way_out)
            self.faults.append(Complaint(place, said, stays=True))
        return value

    def _follow(self, shape: Shape, made: dict[str, Data], place: Pointer) -> None:
        """Fill in what follows where nothing is said; what is said although it follows is told."""
        for item in shape.follows:
            if item.source not in FOLLOWING:
                self.later.append(_Later(place, item))
                continue
            found = FOLLOWING[item.source](self.forms.base.get(place, str(place[-1])), made)
            if found and item.field not in made:
                made[item.field] = self._put((*place, item.field), found, place)
            elif found and made[item.field] == found.value:
                self.twice.append(Twice((*place, item.field), item.source))

    def _put(self, place: Pointer, found: Following, around: Pointer) -> Data:
        """Set down a value that follows: it stands where that stands which it follows from."""
        position = self.places.values[*around, found.field] if found.field else self.places.keys.get(around)
        self.followed.add(place)
        for below in ((), *((key,) for key in found.value)) if isinstance(found.value, dict) else ((),):
            if position:
                self.places.stand((*place, *below), position)
        return found.value

    # Groups

    def _group(self, shape: Shape, made: dict[str, Data], name: str, group: dict[str, Data], place: Pointer) -> None:
        """The things of a group, each with what is shared and not said otherwise."""
        assert shape.group
        section, typed = str(place[-1]), (*place, name)
        made_apart = together.apart(shape.group, group, typed) or Apart(group, {}, ())
        self.faults += [Complaint(spot, said, key=True, stays=True, typed=True) for spot, said in made_apart.faults]
        group = made_apart.block
        shared = self._shared(shape.group, name, made_apart, typed)
        said = {key: _in_brackets(shape.group.fields.get(key), value) for key, value in group.items()}
        things = _by_id(group[section], (*typed, section), shape.group.fields[section])
        if things is not None and not isinstance(group[section], dict):
            said[section] = {key: {} for key, _, _ in things}
        faults = self._blame(shape.group_block, said, typed, made_apart.spots)
        for key, thing, below in things or ():
            if isinstance(thing, dict) and section in thing:
                self._fault(below, message("spread/group-in-group", id=quoted(key), group=quoted(name)))
            else:
                self._share(shape, made, (*place, key), thing, below, shared)
                if below not in self.source.keys or below[-1] == section:
                    self.places.stand_key((*place, key), self.places.of(below))
                self._spoil((*place, key), faults)

    def _shared(self, shape: Shape, name: str, group: Apart, typed: Pointer) -> dict[str, _Shared]:
        shared = {
            key: _Shared(value, group.spots.get(key, (*typed, key)), shape.fields[key])
            for key, value in group.block.items()
            if key in shape.fields and key != typed[0]
        }
        for item in shape.follows:
            if name in shape.fields[item.field].words:
                if item.field not in shared:
                    shared[item.field] = _Shared(name, typed, shape.fields[item.field], of_key=True)
                elif shared[item.field].value == name:
                    self.twice.append(Twice((*typed, item.field), "group-id"))
        return shared

    def _share(
        self,
        shape: Shape,
        made: dict[str, Data],
        place: Pointer,
        thing: Data,
        typed: Pointer,
        shared: dict[str, _Shared],
    ) -> None:
        """One thing of a group."""
        fresh = place[-1] not in made
        thing = self._apart(shape.below(str(place[-1])), thing, place, typed)
        if isinstance(thing, dict):
            kept = {key: value for key, value in thing.items() if _plain(value) != BACK or key not in shared}
            taken = thing.keys() - kept.keys()
            picked = {
                name: Picked(item.value, item.typed, item.typed)
                for name, item in shared.items()
                if name not in thing and (name == "when" or dividing.differs(item.shape, item.value))
            }
            for one in self._entry(shape, made, place, kept | picked, typed):
                for name, item in shared.items() if fresh else ():
                    if name not in taken and name not in picked:
                        self._inherit(made[one], name, item, (*place[:-1], one))
        else:
            self._entry(shape, made, place, thing, typed)

    def _inherit(self, thing: dict[str, Data], name: str, item: _Shared, place: Pointer) -> None:
        spot = (*place, name)
        if name not in thing and (not item.shape.unless or item.shape.unless not in thing):
            self.places.inherited[spot] = item.typed
            thing[name] = self._whole(item.shape, item.value, spot, item.typed)
            if item.of_key:
                self.places.stand(spot, self.source.keys[item.typed])
            else:
                self.places.note_key(spot, item.typed)
        elif name in thing and thing[name] == _in_brackets(item.shape, item.value):
            self.twice.append(Twice(spot, "group"))

    # What openings have of the parts that they are behind

    def _follow_parts(self, whole: dict[str, Data], item: _Later) -> None:
        """Fill in a field that all parts named in a list share."""
        name, made = item.follows.field, _at(whole, item.place)
        named, parts = made.get(item.follows.source), whole.get("parts")
        known = parts if isinstance(parts, dict) else {}
        listed = [part for part in named if isinstance(part, str)] if isinstance(named, list) else []
        spots = [("parts", part, name) for part in listed if isinstance(known.get(part), dict)]
        values = [known[part].get(name) for _, part, _ in spots]
        if not values or values[0] is None or any(value != values[0] for value in values):
            return
        spot = (*item.place, name)
        if made.get(name) in (BACK, [BACK]):
            del made[name]
        elif name in made and spot not in self.taken and item.place not in self.taken:
            self.twice += [Twice(spot, "behind")] if made[name] == values[0] else []
        elif name not in made and (not item.follows.unless or item.follows.unless not in made):
            made[name] = values[0]
            self.places.copy(spot, spots[0], values[0])

    # Faults

    def _fault(self, typed: Pointer, said: Message) -> None:
        self.faults.append(Complaint(typed, said, key=typed in self.source.keys, typed=True))

    def _blame(self, block: str, data: Data, typed: Pointer, spots: Mapping[str, Pointer] = NOWHERE) -> list[Complaint]:
        """What is wrong with a block that is not in the whole, which is told; `spots` are the places of fields that stand elsewhere."""
        written = (complaint for refusal in refusals(data, block) for complaint in write(refusal))
        found = [
            replace(complaint, pointer=self._typed(_spot(typed, complaint.pointer, spots))) for complaint in written
        ]
        self.faults += found
        return found

    def _typed(self, pointer: Pointer) -> Pointer:
        """The place as typed; the entry of a list of one stands where its list does."""
        return pointer[:-1] if pointer[-1:] == (0,) and pointer not in self.source.values else pointer

    def _spoil(self, place: Pointer, faults: list[Complaint]) -> None:
        """A field that a group misspells is missing in each of its things, and nobody need hear of that."""
        for fault in faults:
            typed = fault.pointer
            if fault.meant and typed in self.source.keys:
                spot = (*place, typed[-1])
                self.places.inherited[spot] = typed
                self.places.note(spot, typed)
                self.places.note_key(spot, typed)
                self.faults.append(replace(fault, pointer=spot))


def _asked(data: dict[str, Data]) -> dict[str, dict[str, str]]:
    """The choices of the questions that follow from what is said of the vehicle, also in a mapping of its fields."""
    made = together.apart(shapes.whole("vehicle").fields["vehicle"], data.get("vehicle"), ("vehicle",))
    return implied.choices(made.block if made else data.get("vehicle"))


def _by_id(things: Data, typed: Pointer, shape: Shape) -> list[tuple[str, Data, Pointer]] | None:
    """What stands in a group with where it was typed: by its id, or as a list of ids where nothing else is said of each; None for neither."""
    if isinstance(things, dict):
        return [(key, thing, (*typed, key)) for key, thing in things.items()]
    if shape.items is None:
        return None
    if isinstance(things, str):
        return [(things, {}, typed)]
    if not isinstance(things, list) or not things or not all(isinstance(one, str) for one in things):
        return None
    return [(key, {}, (*typed, i)) for i, key in enumerate(things)]


def _plain(value: Data) -> Data:
    return value.value if isinstance(value, Picked) else value


def _spot(typed: Pointer, pointer: Pointer, spots: Mapping[str, Pointer]) -> Pointer:
    """The place as typed of what stands in a block."""
    return (*spots.get(str(pointer[0]), (*typed, pointer[0])), *pointer[1:]) if pointer else typed


def _at(whole: Data, place: Pointer) -> Data:
    for step in place:
        whole = whole[step]
    return whole


def _below(place: Pointer, typed: Pointer, step: str | int) -> tuple[Pointer, Pointer]:
    """The place of what stands below one, and where that was typed: the very same pointer as long as the two are one."""
    spot = (*place, step)
    return spot, spot if place is typed else (*typed, step)


def _in_brackets(shape: Shape | None, value: Data) -> Data:
    """A list, also where it is one of one."""
    return [value] if shape and shape.is_list and value is not None and not isinstance(value, list) else value


def _in_lists(shape: Shape, value: Data) -> Data:
    """The same with brackets around each one that stands for a list, at any depth."""
    if isinstance(value, dict):
        return {key: _in_lists(below, inner) if (below := shape.below(key)) else inner for key, inner in value.items()}
    return _in_brackets(shape, value)
