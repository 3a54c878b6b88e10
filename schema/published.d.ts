// Made from published.schema.json by `.venv/bin/python tests/types_of_schema.py`.

/** Id: A name for use inside records and files: small letters, digits and hyphens. */
export type Id = string;

/** Day: A date as year-month-day; empty where none is known. */
export type Day = string;

/** When: The cars it is for, in words; empty for all. */
export type When = string;

/** Clauses: The cars it is for: the choices that a variant may have, by variant, of which every one must hold. Empty for all. */
export type Clauses = Record<string, Array<string>>;

/** Car: One kind of car: the choice of each variant, by variant. */
export type Car = Record<string, string>;

/** Source: The evidence it rests on, by id. */
export type Source = Array<string>;

/** Disputes: What the evidence disagrees on here, and that it was taken from another car and not seen on this one, one sentence each. */
export type Disputes = Array<string>;

/** Side: Left or right as seen from the driver's seat facing forward; empty where it has no side. */
export type Side = "" | "left" | "right";

/** Known: Yes, no, or not known. */
export type Known = "yes" | "no" | "unknown";

/** Function: What a wire is for, as the schema of vehicles names it. */
export type Function = string;

/** Behaves: How a wire works, as the schema of vehicles names it; empty where it is not recorded. */
export type Behaves = string;

/** Vehicle: All that follows from one vehicle record, as it stands beside its page. */
export interface Vehicle {
  /** The version of this description. It rises when a fact goes or means something else; a fact that is added leaves it. */
  format: 5;
  id: Id;
  /** Where the vehicle is found: make and id. */
  address: string;
  /** The tag of the language in which the record's own names and texts are; empty where nothing is said. */
  lang: string;
  /** What is said of it to whoever reads another; else empty. */
  lang_words: string;
  whose: Whose;
  /** Whether vehicle and gear are made up, to show how things work. */
  demo: boolean;
  /** The make as people write it. */
  make: string;
  /** The model as people write it. */
  model: string;
  /** What tells this phase of the model from others; empty where nothing must. */
  phase: string;
  /** Make and model. */
  title: string;
  /** The first and last model year in words. */
  years: string;
  /** The first year of the span. */
  first_year: number;
  /** The last year of the span. */
  last_year: number;
  /** The first month of build. */
  built_from: string;
  /** The month before which the last was built. */
  built_to: string;
  /** The months of build, to stand within a sentence. The last month is not covered. */
  built: string;
  /** The same, to begin a sentence. */
  built_words: string;
  /** How this vehicle is told from others like it; empty where nothing is recorded. */
  tell: string;
  /** The bodies it was built with. */
  bodies: Array<string>;
  /** The gearboxes it was built with, in words. */
  gearboxes: Array<string>;
  /** The engines it was built with, as people call them. */
  engines: Array<string>;
  /** The trim levels it was built in. */
  trim_levels: Array<string>;
  /** On which sides the steering wheel may be. */
  drive_sides: Array<"left" | "right">;
  /** What else people call it. */
  also_called: Array<string>;
  /** How the vehicle identification numbers of these cars begin. */
  vin: Array<VinPattern>;
  high_voltage: Known;
  /** Whether it has a 48 V net; null where nobody has looked. */
  forty_eight_volt: Known | null;
  /** The record of the phase before, by id; empty where there is none. */
  follows: string;
  /** The same for people, with the month in which it ended. */
  follows_words: string;
  /** The months in which the model changed, and across which of them the facts were confirmed; empty where none is known. */
  changed: string;
  data_date: Day;
  age: Age;
  standing: Standing;
  /** Where the evidence disagrees. */
  conflicts: Array<Conflict>;
  disputed: Disputes;
  /** What differs from car to car, and how to tell. */
  variants: Array<Variant>;
  /** Every opening, and what is reached for, at every side, as a job is made of them. */
  targets: Array<Target>;
  visit_words: VisitWords;
  /** What can stop the job or costs the owner something, in order of weight. */
  blockers: Array<Blocker>;
  /** Where gear goes in, with what fits. */
  openings: Array<Opening>;
  /** The parts that every procedure is divided into, in their order. */
  sections: Array<Section>;
  /** Every step of every job, in an order that is right for each. */
  steps: Array<Step>;
  /** Which steps each kind of car has for each job. */
  plans: Array<Plan>;
  /** What all jobs together come to in each kind of car; kinds that come to the same stand together. */
  totals: Array<CarTotals>;
  /** The plugs behind the factory unit. */
  connectors: Array<Connector>;
  /** Buttons that are told by their resistance. */
  ladders: Array<Ladder>;
  /** Ways for a cable through the car. */
  runs: Array<Run>;
  /** The factory sound systems. */
  sound: Array<SoundSystem>;
  rest: Rest;
  /** What the car has on no recorded pin. */
  functions: Array<CarFunction>;
  /** What the factory unit also does, and what becomes of it. */
  duties: Array<Duty>;
  from_above: FromAbove;
  /** What hides what, the two sides of the car as one. */
  removal_order: Array<Mapped>;
  /** Where airbags and belt gear are. */
  restraints: Array<RestraintArea>;
  coverage: Coverage;
  asked: Asked;
  /** What the facts rest on. */
  evidence: Array<Evidence>;
}

/** Whose: Whose the record is, where a shop's own collection lies on shared ones. */
export interface Whose {
  /** The shop's own, shared, or shared with additions of the shop; empty in a collection that lies on no other. */
  word: "" | "own" | "shared" | "added";
  /** The same in a sentence. */
  words: string;
  /** The same as lists say it. */
  mark: string;
  /** The ids of the evidence that the shop added. */
  evidence: Array<Id>;
  /** What the shop notes for itself; it stands on pages and is empty in the data. */
  note: string;
}

/** Age: How old the newest evidence was when this was made. */
export interface Age {
  /** The age in words; empty where it is not known. */
  words: string;
  on: Day;
}

/** Standing: How sure the record is as a whole. */
export interface Standing {
  /** Checked at the car, edited since, or not checked. */
  word: "verified" | "stale" | "unverified";
  /** The same in a sentence. */
  text: string;
  on: Day;
  /** Who verified it; empty where nobody did. */
  by: string;
  /** The car it was checked at, in words. */
  car: string;
  /** What stands in the way of verifying it. */
  obstacles: Array<Obstacle>;
  /** What was edited since it was verified. */
  edited: Array<EditedBlock>;
  /** The parts of the record that were verified by themselves. */
  parts: Array<VerifiedPart>;
}

/** Verified part: Some openings, and all that is taken off and joined for them, as somebody verified them at one car. */
export interface VerifiedPart {
  /** The id of its stamp in the record. */
  id: string;
  /** Checked at the car, edited since, or no longer without an open safety question. */
  word: "verified" | "stale" | "unverified";
  /** The openings, by their ids as they are written in the record. */
  of: Array<string>;
  /** At which side of the car; empty for wherever they are. */
  side: "left" | "right" | "";
  on: Day;
  /** Who verified it. */
  by: string;
  /** The car it was checked at, in words. */
  car: string;
  /** All of it in a sentence. */
  text: string;
  /** What was edited since it was verified. */
  edited: Array<EditedBlock>;
}

/** Obstacle: One thing in the way of verifying a record. */
export interface Obstacle {
  /** What is missing. */
  what: string;
  /** Where to find it out. */
  where: string;
}

/** Edited block: A block of facts that is no longer as it was verified. */
export interface EditedBlock {
  /** Its place in the record. */
  block: string;
  /** Its name for people. */
  name: string;
  /** What happened to it. */
  how: "changed" | "added" | "removed";
}

/** Conflict: A fact on which the evidence disagrees. */
export interface Conflict {
  id: Id;
  /** Whether the claims agree after all. */
  state: "conflict" | "agreed";
  /** How it is headed, in words. */
  word: string;
  /** The place of the fact in the record. */
  about: string;
  /** The fact in words. */
  fact: string;
  /** What stands in the record; empty where it was not found. */
  stands: string;
  /** What each side says. */
  claims: Array<Claim>;
  /** What is reckoned with until it is settled. */
  cautious: string;
  /** Why that is the cautious side. */
  reason: string;
  /** Whether somebody may be hurt by the wrong value. */
  safety: boolean;
  /** Whether it was settled at a car. */
  settled: boolean;
  /** The evidence that settled it, by id; empty where none did. */
  settled_by: string;
  /** Claims and cautious value in a sentence or two. */
  text: string;
}

/** Claim: What some evidence says of a fact. */
export interface Claim {
  /** The value, in both systems where it has a unit. */
  says: string;
  source: Source;
}

/** Variant: A question about the car at hand. */
export interface Variant {
  id: Id;
  /** What to ask. */
  ask: string;
  conflicts: Disputes;
  /** The answers. */
  choices: Array<Choice>;
}

/** Choice: One answer, and how to tell that it is the one. */
export interface Choice {
  id: Id;
  /** The answer for people. */
  label: string;
  /** What to see at the car without opening it; empty where nothing is recorded. */
  tell: string;
  /** Pictures by which to tell it. */
  photos: Array<Photo>;
}

/** Target: One opening, or what is reached for its own sake, at one side. */
export interface Target {
  /** Opening, or what is reached for, and side, as jobs name them. */
  id: string;
  opening: Id;
  side: Side;
  /** Opening, or what is reached and for what, and side for people. */
  name: string;
  /** The same without its side. */
  whole: string;
  /** A few capital letters that tell it from the others. */
  mark: string;
  when: When;
  clauses: Clauses;
}

/** Blocker: Something to know before the job is taken on. */
export interface Blocker {
  /** Its name in every language. */
  id: string;
  /** Stops the job, is lost with it, is not known, or must be ordered. */
  weight: "stop" | "lost" | "unknown" | "need";
  title: Told;
  text: Told;
  /** The openings it is about, by id; none for every job. */
  openings: Array<string>;
  /** The cars it is for, in words; empty for every one. */
  when: Told;
  clauses: Clauses;
}

/** Opening: One opening: its dimensions, what it takes, what is drawn. */
export interface Opening {
  id: Id;
  /** The opening for people. */
  name: string;
  /** What goes in. */
  kind: "amplifier" | "receiver" | "speaker" | "tweeter";
  /** The kind for people. */
  kind_words: string;
  /** The kind of gear that goes in. */
  gear: string;
  /** The sides it is on; none for one that has no side. */
  sides: Array<"left" | "right">;
  when: When;
  clauses: Clauses;
  /** Its dimensions and facts as a table shows them. */
  rows: Array<Row>;
  conflicts: Disputes;
  crash_sensor: Known;
  /** Whether its outline is known, so that a template in true scale can be drawn. */
  outline: boolean;
  /** What to mind when gear goes in; empty where nothing is recorded. */
  install_how: string;
  /** What can go wrong there. */
  cautions: Array<Caution>;
  source: Source;
  /** Pictures of it. */
  photos: Array<Photo>;
  /** What it takes, once for each group of cars. */
  limits: Array<Limits>;
  drawn: Drawn;
  form: Form;
}

/** Photograph: A picture of a thing at a car, with the spots to look at. */
export interface Photo {
  /** The name of its file beside the page; another picture has another name. */
  file: string;
  /** In pixels. */
  width: number;
  /** In pixels. */
  height: number;
  /** The same for smaller screens, the narrowest first. */
  smaller: Array<Smaller>;
  /** What is to be seen. */
  shows: string;
  /** The spots to look at. */
  marks: Array<Mark>;
  /** Who took it when, at which car, for each piece of evidence. */
  taken: Array<string>;
  source: Source;
}

/** Smaller photograph: The same photograph, narrower. */
export interface Smaller {
  /** The name of its file beside the page. */
  file: string;
  /** In pixels. */
  width: number;
}

/** Mark: One spot in a photograph. */
export interface Mark {
  /** The number in the picture. */
  number: number;
  /** In pixels of the whole picture. */
  x: number;
  /** In pixels of the whole picture. */
  y: number;
  /** What is there. */
  label: string;
}

/** Row: A line of a table of facts. */
export interface Row {
  /** The keys that lead from the opening to the fact, with / between; empty where it is no single fact. */
  field: string;
  /** What it is. */
  label: string;
  /** The value in words. */
  value: string;
}

/** Caution: A hazard and how to avoid it, with the signal words of ANSI Z535.6. */
export interface Caution {
  /** How bad it can be. */
  signal: "DANGER" | "WARNING" | "CAUTION" | "NOTICE";
  /** What the danger is. */
  hazard: string;
  /** What happens if it is not avoided. */
  consequence: string;
  /** What to do. */
  avoid: string;
  when: When;
}

/** Limits: What an opening takes, in cars in which that is the same. */
export interface Limits {
  /** Whether such cars have the opening. */
  there: boolean;
  /** Why nothing is told of it; empty where something is. */
  closed: string;
  /** The kinds of car; none for every one. */
  cars: Array<Car>;
  /** The same for people; empty for every one. */
  cars_words: string;
  /** What the opening takes by its measures. */
  takes: Array<string>;
}

/** Drawn: What the pictures of an opening are made of; nothing for one of which nothing is measured. */
export interface Drawn {
  bay?: Bay;
  dash?: Dash;
  front?: Front;
  section?: Cut;
  rings?: Rings;
}

/** Measure: A length on a drawing. */
export interface Measure {
  /** Its length; null where it is not known. */
  mm: number | null;
  /** How it is written. */
  text: string;
}

/** Frame: A rectangle on a drawing. */
export interface Frame {
  width: Measure;
  height: Measure;
}

/** Outline: A shape on a drawing. */
export interface Outline {
  /** Which shape it is. */
  kind: "round" | "oval" | "rectangle";
  width: Measure;
  height: Measure;
}

/** Bolt pattern: Bolt holes on a drawing. */
export interface Pattern {
  /** On a circle, or else at the corners of a rectangle. */
  circle: boolean;
  /** How many holes there are. */
  count: number;
  width: Measure;
  height: Measure;
  /** Of the first hole, in degrees; null where it is not known. */
  angle: number | null;
}

/** Drawn margin: What is left over, as it stands on a drawing. */
export interface DrawnMargin {
  /** How it is written. */
  text: string;
  /** How it is drawn. */
  verdict: "fits" | "close" | "too close" | "strikes" | "unknown";
}

/** Form: What the scripts reckon with at an opening for gear that is typed or stands on the shelf. */
export interface Form {
  /** What goes in. */
  kind: "amplifier" | "receiver" | "speaker" | "tweeter";
  /** The kind of gear that goes in. */
  gear: string;
  /** Its dimensions, on the cautious side of any dispute. */
  opening: AmplifierPlace | ReceiverPlace | SpeakerPlace | TweeterPlace;
  clauses: Clauses;
  /** The cars in which it is inside the high-voltage system, so that nothing is offered. */
  closed: Array<Clauses>;
  /** Whether nothing may be fitted there that takes material off the car. */
  uncut: boolean;
  /** What is to be said of the dimensions. */
  notes: Array<string>;
  /** What may drive the gear and be joined to it, in each kind of car. */
  loads: Array<Load>;
  /** What gear there is joined to; null where it takes the place of no factory unit. */
  joining: Joining | null;
  /** What an amplifier there is fed by, hears and drives; null for other gear. */
  feeding: Feeding | null;
}

/** Feeding: What an amplifier is fed by, hears and drives, in every kind of car. */
export interface Feeding {
  /** The run of its cable; null where none is recorded. */
  run: FedAlong | null;
  /** What the car can give; null where nothing is recorded. */
  supply: Battery | null;
  /** What the factory radio sends. */
  sound: Array<SentLevel>;
  /** The other places for amplifiers. */
  beside: Array<BesideIt>;
  /** The places on the channels of the car. */
  parts: Array<OnChannel>;
}

/** Run of a feed: A run that feeds an amplifier. */
export interface FedAlong {
  /** The run for people. */
  name: string;
  /** In m; null where nobody measured it. */
  length: number | null;
  /** How warm it is there: in the cabin, or beside the engine. */
  place: string;
  /** What its insulation must bear, in degrees C; null for what is usual. */
  insulation: number | null;
}

/** Supply of a car: What the car can give. */
export interface Battery {
  alternator: Given;
  battery: Given;
}

/** Level of a radio: What the factory radio sends in some cars. */
export interface SentLevel {
  /** The level of sound. */
  output: string;
  clauses: Clauses;
}

/** Place beside it: Another place for an amplifier. */
export interface BesideIt {
  opening: Id;
  /** Whether its cable goes along the same run. */
  same_run: boolean;
  clauses: Clauses;
}

/** Place on a channel: A place of which a channel of the car may be loaded. */
export interface OnChannel {
  opening: Id;
  /** The place for people. */
  name: string;
  /** The channel that feeds it; empty where nobody recorded it. */
  channel: string;
  /** The sides it is on; none for one that has no side. */
  sides: Array<"left" | "right">;
  impedance: Given;
  /** What the factory's is fed through; empty where nothing is recorded. */
  fed_through: "" | "direct" | "capacitor" | "crossover" | "unknown";
  /** What new gear there is fed through. */
  then_fed_through: "" | "direct" | "capacitor" | "crossover" | "unknown";
  /** Whether the factory left it empty. */
  empty: boolean;
  clauses: Clauses;
}

/** Joining: What a receiver is joined to, in each kind of car. */
export interface Joining {
  /** What the turn-on of an amplifier is called. */
  turn_on: string;
  /** The functions that some cars have. */
  functions: Array<HadFunction>;
  /** The factory sound systems. */
  sound: Array<HadSound>;
  /** What the factory unit also does. */
  duties: Array<HadDuty>;
}

/** Function of a car: A function that some cars have. */
export interface HadFunction {
  /** The function by its id. */
  function: string;
  /** The function for people, where it comes as data; else empty. */
  name: string;
  /** How the car has it; a pin of a plug, or what the record says of one that is on no pin. */
  by: "pin" | "wire" | "data" | "absent" | "unknown";
  /** Whether the evidence disagrees on it. */
  disputed: boolean;
  clauses: Clauses;
}

/** Sound of a car: A factory sound system. */
export interface HadSound {
  /** The level that the factory radio sends. */
  output: string;
  /** Whether an amplifier follows it. */
  amplified: boolean;
  /** What switches that on; empty where nobody recorded it. */
  turn_on: string;
  clauses: Clauses;
}

/** Duty of a car: Something that the factory unit also does. */
export interface HadDuty {
  /** The duty for people. */
  name: string;
  /** Its ids: gear that keeps one of them keeps it. */
  called: Array<string>;
  /** The function that a receiver must have a lead for; empty for none. */
  lead: string;
  /** Whether a unit that no longer does it is no plain replacement. */
  grave: boolean;
  /** What would keep it. */
  kept_by: string;
  clauses: Clauses;
  /** What becomes of it whatever the gear is, where that stops the job. */
  stops: Array<DutyStop>;
}

/** Stop of a duty: What becomes of a duty whatever the gear is. */
export interface DutyStop {
  /** The duty and what becomes of it. */
  words: string;
  clauses: Clauses;
}

/** Quantity: A measured value as it was typed. */
export interface Quantity {
  /** In mm, ohm, degrees, Hz or W. */
  value: number;
  /** Half of what the last digit or mark stands for. */
  step: number;
  /** As it was typed. */
  text: string;
  /** In both systems of units. */
  shown: string;
  /** Whether it is a lower bound: there may be more. */
  least: boolean;
}

/** Given: A quantity, that it is unknown, that there is none, or null where nothing is recorded. */
export type Given = Quantity | "unknown" | "none" | null;

/** Shape: A hole or the outline of gear. */
export interface Shape {
  /** Which shape it is. */
  shape: "round" | "oval" | "rectangle";
  diameter: Given;
  width: Given;
  height: Given;
}

/** Bolts: A bolt pattern. */
export interface Bolts {
  /** On a circle, or at the corners of a rectangle. */
  pattern: "circle" | "rectangle";
  /** How many holes there are. */
  count: number;
  diameter: Given;
  width: Given;
  height: Given;
  angle: Given;
}

/** Face: A rectangle by its width and height. */
export interface Face {
  width: Given;
  height: Given;
}

/** Depth: The room behind an opening. */
export interface Depth {
  clear: Given;
  /** The face it was measured from; empty where it is not recorded. */
  datum: "" | "skin" | "bracket" | "panel" | "face";
  /** With the glass where; empty where it is not recorded. */
  over: "" | "whole-travel" | "glass-down" | "no-glass";
  /** What is met first, in words. */
  to: string;
  /** What sort of thing that is; empty where it is not recorded. */
  obstruction: string;
  leans: Given;
}

/** Load: What may drive a place, and all that may hang on the same channel. */
export interface Load {
  clauses: Clauses;
  /** The channel that feeds it; empty where nobody recorded it. */
  channel: string;
  /** The factory sound systems of such a car. */
  systems: Array<LoadSystem>;
  /** The places for amplifiers. */
  amplifiers: Array<LoadAmplifier>;
  /** The places on the channel, first the one asked about. */
  parts: Array<LoadPart>;
  /** Places whose channel is not recorded. */
  unplaced: Array<Unplaced>;
}

/** System of a load: A factory sound system that may drive a channel. */
export interface LoadSystem {
  /** Whether its amplifier stays when the radio goes. */
  amplified: boolean;
  /** Whether the radio drives this channel beside its amplifier. */
  by_radio: boolean;
  least: Given;
}

/** Amplifier of a load: A place for an amplifier that may drive a channel. */
export interface LoadAmplifier {
  opening: Id;
  /** Whether an amplifier there drives this channel; null where that hangs on its outputs. */
  drives: boolean | null;
}

/** Part of a load: A place on a channel. */
export interface LoadPart {
  opening: Id;
  /** The place for people. */
  name: string;
  impedance: Given;
  /** What the factory's is fed through; empty where nothing is recorded. */
  fed_through: "" | "direct" | "capacitor" | "crossover" | "unknown";
  /** What new gear there is fed through. */
  then_fed_through: "" | "direct" | "capacitor" | "crossover" | "unknown";
  /** Whether the factory left it empty. */
  empty: boolean;
}

/** Unplaced: A place that may be on the same channel, since nobody said on which it is. */
export interface Unplaced {
  opening: Id;
  /** The place for people. */
  name: string;
  /** Whether the factory left it empty. */
  empty: boolean;
}

/** Section of the procedure: A stretch of steps with a heading. */
export interface Section {
  id: SectionId;
  /** The heading. */
  title: string;
}

/** Section: Which stretch of the procedure. */
export type SectionId = "before" | "prepare" | "remove" | "install" | "test" | "refit" | "restore" | "try" | "after";

/** Step: One step of the procedure. */
export interface Step {
  /** The name of the step in this record. */
  id: string;
  /** What sort of step it is. */
  kind: string;
  section: SectionId;
  /** What to do with what the title names; empty where the title says it. */
  verb: string;
  /** What it is about. */
  title: string;
  /** The part, preparation or opening, by id; empty for none. */
  part: string;
  side: Side;
  /** The side of the car in words; empty where it has none. */
  on_side: string;
  /** How to do it, line by line. */
  text: Array<string>;
  /** How a part comes off. */
  motion: string;
  /** Whether the motion has a direction, and so says more than what holds the part. */
  directed: boolean;
  /** On which side of the car it is. */
  place: Array<Placed>;
  /** The area of the car; empty where it is not recorded. */
  area: string;
  /** What holds the part. */
  fasteners: Array<FastenerLine>;
  /** Plugs, cables and rods that hang on it. */
  tethers: Array<TetherLine>;
  /** What can go wrong; they stand before the step. */
  cautions: Array<Caution>;
  /** How long it takes; null where nobody has timed it. */
  minutes: number | null;
  /** How long it takes, in words; empty where nobody has timed it. */
  time: string;
  /** How long to wait; null for none. */
  wait: Wait | null;
  /** What is needed besides the tools of its fasteners. */
  tools: Array<string>;
  /** Whether nobody has recorded how to do it. */
  unknown: boolean;
  conflicts: Disputes;
  /** The state of the car, as far as it is the same in every visit. */
  state: Record<string, string>;
  /** The same for people. */
  state_words: string;
  /** What changes of the state: what, which one, and its new value. */
  turns: Array<Array<string>>;
  /** The state it must have. */
  needs: Record<string, string>;
  /** What of the car is used in it. */
  uses: Array<string>;
  /** What is used up. */
  materials: Array<Purchase>;
  /** Whether it is about the new gear. */
  new: boolean;
  /** How many pieces of work in it have no recorded time. */
  untimed: number;
  source: Source;
  /** The targets whose jobs have it. */
  targets: Array<string>;
  /** Whether a kit is built up in it, by steps of its own. */
  builds: boolean;
  when: When;
  /** Pictures of what comes off, or is prepared. */
  photos: Array<Photo>;
}

/** Placed: On which side of the car something is. */
export interface Placed {
  /** The side as seen from the driver's seat facing forward; empty where it is not known. */
  side: "" | "left" | "right";
  /** The side in words. */
  text: string;
  when: When;
  clauses: Clauses;
}

/** Fasteners of a step: Fasteners of one sort, and what becomes of them. */
export interface FastenerLine {
  /** What is done with them. */
  fate: "out" | "back" | "moved" | "bagged" | "binned" | "new" | "leave";
  /** The same for people. */
  fate_words: string;
  /** What becomes of them when they are out; empty where they go back. */
  later: "" | "bagged" | "moved" | "binned";
  /** The same for people. */
  later_words: string;
  /** What sort of fastener. */
  kind: string;
  /** How many there are. */
  count: number | "unknown";
  /** Count and sort for people. */
  text: string;
  /** Thread, length, place, torque and notes; empty for none. */
  detail: string;
  /** The part that hides them; empty for none. */
  hidden_by: string;
  /** What turns them; empty where none is needed. */
  tool: string;
  /** All the tools of which any one will do. */
  either: Array<string>;
  /** Whether they are spent when they come out. */
  single_use: boolean;
  /** What a driver fits; null for none. */
  head: Head | null;
  /** What tells them from others of the kind. */
  sort: string;
  /** How many at which edge. */
  at: Record<string, number>;
  /** A code of the spot they are in that edges cannot say; its words stand in the detail. Empty where none is recorded. */
  where: string;
  /** How tight they must be, and what depends on it, in words; empty where neither is recorded. */
  torque: string;
  /** What they add to the tally. */
  counts: Array<Tally>;
  /** What takes the place of spent ones. */
  buy: Array<Purchase>;
  when: When;
  clauses: Clauses;
}

/** Head: The head of a screw or bolt. */
export interface Head {
  /** The family of drives. */
  family: string;
  /** Family and size. */
  label: string;
}

/** Tally: Fasteners of one sort, by what becomes of them. */
export interface Tally {
  /** Which sort. */
  sort: string;
  /** How many come out. */
  out: number;
  /** How many go back. */
  back: number;
  /** How many go to the new gear. */
  moved: number;
  /** How many are kept with the old part. */
  bagged: number;
  /** How many are spoilt as they come out and are used no more. */
  binned: number;
  /** How many new ones go in. */
  new: number;
  /** How many lines have no recorded number. */
  unrecorded: number;
}

/** Purchase: Something that is used up or spent. */
export interface Purchase {
  /** How many; null where it is not recorded. */
  count: number | null;
  /** What to buy. */
  what: string;
  /** What it is for. */
  part: string;
}

/** Wait: Time that must pass. */
export interface Wait {
  /** How long; null where nobody has recorded it. */
  seconds: number | null;
  /** How long, in words. */
  text: string;
  /** What is waited for. */
  why: string;
  source: Source;
}

/** Tether of a step: A plug, cable or rod, and what is done with it. */
export interface TetherLine {
  id: Id;
  /** The tether for people. */
  name: string;
  /** What sort of tether. */
  kind: string;
  /** The same for people. */
  kind_words: string;
  /** Whether it belongs to the airbags or belts. */
  restraint: boolean;
  /** What to mind of its circuit; empty for an ordinary one. */
  circuit_words: string;
  /** What is done with it. */
  act: string;
  /** The same for people. */
  act_words: string;
  /** What becomes of it later. */
  later: Array<string>;
  /** The same for people. */
  later_words: string;
  /** What it is on, where the step is about something else. */
  part: string;
  side: Side;
  /** What is dead without it. */
  serves: Array<string>;
  /** How it is done; empty where it needs no words. */
  how: string;
  when: When;
  clauses: Clauses;
}

/** Plan: The steps of one kind of car, by their places in the list of steps. */
export interface Plan {
  car: Car;
  /** The steps of each target by itself. */
  singles: Record<string, Array<number>>;
  /** The steps of targets together, joined with a plus, where they are not the sum of their steps. */
  sets: Record<string, Array<number>>;
}

/** Totals of kinds of car: What the jobs come to in some kinds of car. */
export interface CarTotals {
  /** The kinds of car. */
  cars: Array<Car>;
  totals: Totals;
  /** The same in words; empty for every car, and for those that no words set apart. */
  words: string;
}

/** Totals: What jobs together come to. */
export interface Totals {
  /** The tools needed. */
  tools: Array<Tool>;
  /** What becomes of the fasteners. */
  fasteners: Array<Tally>;
  /** What is used up. */
  buy: Array<Purchase>;
  /** The recorded time. */
  minutes: number;
  /** How many pieces of work have no recorded time. */
  untimed: number;
  /** Each wait in seconds; null where nobody has recorded it. */
  waits: Array<number | null>;
  /** The time with what it leaves out. */
  time_text: string;
}

/** Tool: A tool, and what will do in its place. */
export interface Tool {
  /** The tool. */
  name: string;
  /** What will do as well. */
  instead: Array<string>;
}

/** Plug: One plug, pin by pin. */
export interface Connector {
  id: Id;
  /** The plug for people. */
  name: string;
  /** Where on its wires it is, in words; empty for what the factory radio is joined by. */
  end: string;
  /** From which side its pins were counted. */
  view: string;
  /** Rows and columns. */
  size: string;
  /** The standard block it is; empty for none. */
  standard: string;
  when: When;
  clauses: Clauses;
  /** Its contacts. */
  pins: Array<Pin>;
  conflicts: Disputes;
  source: Source;
  /** The jobs for which it is met, as jobs are named; none where that is not known. */
  jobs: Array<string>;
  drawn: Plug;
  /** What the meter guide reckons with; null for a plug that nobody meters. */
  meter: MeterPlug | null;
  /** What a meter should show on each pin. */
  expect: Array<Expected>;
  /** Pictures of it. */
  photos: Array<Photo>;
}

/** Pin: One contact of a plug and its wire. */
export interface Pin {
  /** Its number on the plug. */
  id: string;
  /** Plug and pin. */
  address: string;
  function: Function;
  /** The same for people. */
  function_words: string;
  /** Null where it is not recorded. */
  colour: Colour | null;
  /** What else is recorded of the wire. */
  wire: Array<string>;
  /** Whether somebody proved it with a meter. */
  metered: boolean;
  conflicts: Disputes;
  /** What is noted of it; empty for nothing. */
  note: string;
  when: When;
  clauses: Clauses;
}

/** Colour of a wire: The colour as people say it, as drawings letter it (IEC 60757) and as screens show it. */
export interface Colour {
  /** Base and tracers in words. */
  words: string;
  /** The letters, base and tracers in order; empty where it cannot be read. */
  iec: string;
  /** The letters in alphabetical order. */
  iec_sorted: string;
  /** The colour of the base on a screen; null where it cannot be read. */
  base: string | null;
  /** The colours of the tracers on a screen. */
  tracers: Array<string>;
  /** What to look at again; empty for nothing. */
  doubt: string;
  /** What an unreadable colour could mean. */
  may_be: Array<string>;
}

/** Expected readings of a pin: What a meter should show on one pin. */
export interface Expected {
  /** Its number on the plug. */
  id: string;
  /** What the wire is for. */
  function_words: string;
  conflicts: Disputes;
  /** One line for each kind of reading. */
  lines: Array<string>;
  when: When;
  clauses: Clauses;
}

/** Drawn plug: A plug as it is drawn, with its other maps and its standard. */
export interface Plug {
  id: Id;
  /** The plug for people. */
  name: string;
  /** How its colours are written; empty for none. */
  scheme: string;
  /** The plug from both sides; none where it cannot be drawn. */
  faces: Array<PlugFace>;
  /** The signs of the drawing. */
  legend: Array<string>;
  /** Why it is not drawn; empty where it is. */
  no_face: string;
  /** Pins whose place is not known. */
  lost: Array<string>;
  /** Its standard block beside what is recorded; null for none. */
  standard: Standard | null;
  /** How to know that the map is for this car. */
  told_by: Array<Telling>;
  /** Other maps of the same plug. */
  maps: Array<OtherMap>;
}

/** Face of a plug: A plug from one side. */
export interface PlugFace {
  /** From which side. */
  view: "wires" | "contacts";
  /** The same for people. */
  words: string;
  /** What is drawn. */
  title: string;
  /** Whether it was recorded from this side. */
  recorded: boolean;
  /** The edge with the latch; empty where it is not recorded. */
  latch: string;
  /** How many rows of places. */
  rows: number;
  /** How many columns of places. */
  columns: number;
  /** In units of the drawing. */
  least_width: number;
  /** Its places. */
  cells: Array<PlugCell>;
}

/** Place in a plug: One place of a plug's face. */
export interface PlugCell {
  /** Counted from the top. */
  row: number;
  /** Counted from the left. */
  column: number;
  /** What it is called; empty where that is not known. */
  number: string;
  /** A pin, looked at and empty, or not recorded. */
  state: "pin" | "blank" | "unknown";
  /** What its wire is for; empty for none. */
  function: string;
  /** A few letters for the function. */
  mark: string;
  /** Null where it is not recorded. */
  colour: Colour | null;
  when: When;
  clauses: Clauses;
  /** The place in a sentence. */
  words: string;
  /** Where the page has more; empty for none. */
  link: string;
}

/** Standard: A standard block beside what is recorded. */
export interface Standard {
  /** Which block. */
  id: string;
  /** The block for people. */
  title: string;
  /** How far the standard is known. */
  sure: string;
  /** Pins that look exchanged. */
  exchanged: Array<string>;
  /** Pins that differ and were not metered. */
  unproven: Array<string>;
  /** Its contacts. */
  pins: Array<StandardPin>;
}

/** Pin of a standard: One contact of a standard block. */
export interface StandardPin {
  /** Its number. */
  pin: string;
  /** What the standard has there. */
  expected: string;
  /** What is said of it; empty for nothing. */
  note: string;
  /** What the record has there; empty for nothing. */
  recorded: string;
  agrees: Known;
  /** Whether somebody proved it with a meter; empty where nothing is recorded. */
  metered: "" | "yes" | "no" | "unknown";
}

/** Telling: A question by which a map is known to be for this car. */
export interface Telling {
  /** What to ask. */
  ask: string;
  /** The answers for which it is. */
  choices: Array<ToldChoice>;
}

/** Answer for a map: One answer for which a map is. */
export interface ToldChoice {
  /** The answer for people. */
  label: string;
  /** What to see at the car. */
  tell: string;
  /** The months of build; empty where they do not matter. */
  built: string;
}

/** Other map: Another map of the same plug. */
export interface OtherMap {
  id: Id;
  /** The map for people. */
  name: string;
  when: When;
  /** How to know that it is for this car. */
  told_by: Array<Telling>;
  /** What is wrong with the two; empty for nothing. */
  warning: string;
  /** Pins that differ. */
  differences: Array<Difference>;
}

/** Difference: A pin on which two maps differ. */
export interface Difference {
  /** Its number. */
  pin: string;
  /** How it differs. */
  kind: string;
  /** What differs. */
  what: Array<string>;
  /** The difference in a sentence. */
  words: string;
}

/** Ladder: Buttons that are told by their resistance. */
export interface Ladder {
  id: Id;
  /** The ladder for people. */
  name: string;
  /** Plug and pin it is read at. */
  pin: string;
  /** What it is read against. */
  against: string;
  /** How far a reading may be off. */
  tolerance: string;
  /** Its buttons. */
  rungs: Array<RungWords>;
  /** The jobs for which its plug is met; none where that is not known. */
  jobs: Array<string>;
  when: When;
  clauses: Clauses;
  conflicts: Disputes;
  source: Source;
}

/** Button: A button with its band in words. */
export interface RungWords {
  /** The button for people. */
  name: string;
  /** The resistance it shows. */
  band: string;
}

/** Cable run: A way for a cable, and the cable that an amplifier wants along it. */
export interface Run {
  id: Id;
  /** The run for people. */
  name: string;
  /** Where it begins. */
  from: string;
  /** Where it ends. */
  to: string;
  /** How long it is. */
  length: string;
  /** Along which side of the car it lies; empty where that is not recorded. */
  side: string;
  /** Whether it passes there, in words. */
  engine: string;
  /** Where it goes through, and what protects it there. */
  passes: Array<string>;
  /** What is laid there. */
  carries: Array<string>;
  /** The parts that must be off to lay it, by name; none where no part is recorded. */
  trims: Array<string>;
  /** Where no ground may be joined; empty where nothing is known against it. */
  ground: string;
  /** The airbags and belt parts along the way, with what to mind; empty where the record names none. */
  near: string;
  /** What is noted of it; empty for nothing. */
  note: string;
  /** The cable for usual currents; none where the length is not known. */
  cables: Array<RunCable>;
  /** What they are reckoned with. */
  assumed: string;
  /** The jobs for which cable is laid there; none where that is not known. */
  jobs: Array<string>;
  when: When;
  clauses: Clauses;
  conflicts: Disputes;
  source: Source;
}

/** Cable of a run: The cable for one current. */
export interface RunCable {
  /** The current. */
  current: string;
  /** The size in AWG. */
  awg: string;
  /** The size in mm². */
  metric: string;
  /** The fuse at the battery. */
  fuse: string;
  /** What decides the size. */
  why: string;
}

/** Sound system: A factory sound system. */
export interface SoundSystem {
  id: Id;
  conflicts: Disputes;
}

/** At rest: What the car draws asleep. */
export interface Rest {
  /** In A; null where nobody has recorded it. */
  current: number | null;
  /** The same for people. */
  current_words: string;
  /** In s; null where nobody has recorded it. */
  asleep_after: number | null;
  /** The same for people. */
  asleep_after_words: string;
  source: Source;
}

/** Function without a pin: A function that stands on no recorded pin. */
export interface CarFunction {
  id: Function;
  /** The function for people. */
  name: string;
  /** How the car has it. */
  by: "wire" | "data" | "absent" | "unknown";
  /** The same for people. */
  by_words: string;
  /** What is recorded of its wire. */
  wire: Array<string>;
  conflicts: Disputes;
  /** What is noted of it; empty for nothing. */
  note: string;
  when: When;
  clauses: Clauses;
}

/** Duty: Something that the factory unit also does. */
export interface Duty {
  id: Id;
  /** The duty for people. */
  name: string;
  /** How it can be kept, as recorded. */
  kept_by: "none" | "stays" | "moved" | "interface" | "unknown";
  /** What becomes of it. */
  becomes: string;
  /** The same, with a word of warning. */
  kept_words: string;
  /** What becomes of it, in a word. */
  fate: "stays" | "moved" | "kept" | "lost" | "unknown";
  /** Who decides on a loss. */
  weight: string;
  /** The same for people. */
  weight_words: string;
  /** The word of warning; empty for none. */
  word: "" | "STOP" | "LOST" | "UNKNOWN" | "NEEDED";
  conflicts: Disputes;
  /** What is noted of it; empty for nothing. */
  note: string;
  /** The openings it is about, by id. */
  openings: Array<string>;
  when: When;
  clauses: Clauses;
  source: Source;
}

/** Mapped: A part, or what parts come off for, on the map of the order. */
export interface Mapped {
  /** What it is called. */
  name: string;
  /** Whether parts come off for it, and it hides nothing itself. */
  goal: boolean;
  /** The steps that are about it. */
  steps: Array<MappedStep>;
  /** What must be off before it, by places in the list. */
  after: Array<number>;
  /** What one of several ways to it takes off, by places in the list. */
  either: Array<number>;
  clauses: Clauses;
}

/** Step on the map: A step that takes a part off. */
export interface MappedStep {
  side: Side;
  /** The name of the step; of a goal its target. */
  step: string;
}

/** From above: Where in the car things are, for a sketch of it from above. */
export interface FromAbove {
  /** The shapes of body; the first is drawn. */
  bodies: Array<DrawnChoice>;
  /** 'four' where the record knows doors at the rear; empty where it does not. */
  doors: "" | "four";
  /** The sides on which the steering wheel may be. */
  wheels: Array<DrawnChoice>;
  /** Where each target is. */
  jobs: Array<SeatedJob>;
  /** Where the batteries are that are switched off. */
  batteries: Array<Seated>;
  /** Whether the place of each battery is recorded. */
  battery_known: boolean;
  /** Areas with airbags, belt parts or their sensors. */
  fires: Array<string>;
  /** Areas that are worked in of which nobody recorded whether anything in them may fire. */
  unlooked: Array<string>;
  /** Areas that high voltage comes near, or in which it is. */
  high_voltage: Array<string>;
}

/** Drawn choice: Something of the car that is drawn, with the cars that have it. */
export interface DrawnChoice {
  /** A body, or a side. */
  name: string;
  clauses: Clauses;
}

/** Place of a target: Where in the car a target is; nowhere if no area is recorded. */
export interface SeatedJob {
  target: Id;
  /** Its places, by cars. */
  seats: Array<Seated>;
}

/** Seated: An area of the car and a side, with the cars for which that is so. */
export interface Seated {
  /** The area. */
  area: string;
  /** The side; empty for an area as a whole, and where it is not known. */
  side: "" | "left" | "right";
  clauses: Clauses;
}

/** Restraint area: An area of the car with airbags or belt gear. */
export interface RestraintArea {
  /** The area. */
  area: string;
  /** What is there. */
  items: Array<string>;
  conflicts: Disputes;
}

/** Coverage: What is not known yet. */
export interface Coverage {
  /** How much of it is answered. */
  share: string;
  /** Openings of which nobody has said whether some cars have them. */
  missing: Array<MissingCell>;
  /** What to measure first. */
  next: Array<string>;
  /** How many things more there are to measure. */
  more: number;
}

/** Missing cell: An opening that some cars may or may not have. */
export interface MissingCell {
  opening: Id;
  /** The opening for people. */
  name: string;
  /** The cars in words. */
  cars: Array<string>;
}

/** Evidence: What facts rest on: who saw them, when, on which car. */
export interface Evidence {
  id: Id;
  /** How the facts were had. */
  how: string;
  /** How the facts were had, in words. */
  how_words: string;
  on: Day;
  /** Who had them. */
  by: string;
  /** The car in words; empty for none. */
  car: string;
  seen: Seen;
  /** What it was measured with; empty where it is not recorded. */
  with: string;
  /** What is noted of it; empty for nothing. */
  note: string;
  /** How old it was when this was made. */
  age: string;
  /** What names it as its source, in words. */
  facts: Array<string>;
}

/** Seen: What is known of the car that evidence is from. */
export interface Seen {
  /** Its year; null where it is not recorded. */
  year: number | null;
  /** Its month of build; empty where it is not recorded. */
  built: string;
  side: Side;
  /** Its answers to the questions about the car. */
  is: Record<string, string>;
}

/** Words of a visit: The words that the text of a visit to the vehicle may have. */
export interface VisitWords {
  /** Every variant with its choices, also those that nothing depends on, in the order in which they are written. */
  variants: Record<string, Array<string>>;
  /** The id that each opening is written under, by its own. */
  written: Record<string, string>;
  /** The kind of gear that goes in, by opening. */
  takes: Record<string, string>;
  /** The kinds of gear that may stand between there, by what names an opening. */
  between: Record<string, Array<string>>;
}

/** Choosing: What can be chosen of a visit, in the element `ut-choosing` of each of a vehicle's pages. */
export interface Choosing {
  /** Where the vehicle is found. */
  address: string;
  /** Every opening at every side. */
  targets: Array<ChosenTarget>;
  /** The answers about the car for people, by variant and choice. */
  variants: Record<string, Record<string, string>>;
  words: VisitWords;
}

/** Target to choose: One opening at one side. */
export interface ChosenTarget {
  /** Opening and side, as jobs name them. */
  id: string;
  opening: Id;
  side: Side;
  /** Opening and side for people. */
  name: string;
  /** A few capital letters that tell it from the others. */
  mark: string;
  clauses: Clauses;
}

/** Data of a page: What the page of a visit filters and adds up, in its element `ut-data`. */
export interface Page {
  /** The headings of the procedure, by section. */
  sections: Record<string, string>;
  /** Where in the car steps are done: an area with its side, in words. */
  places: Record<string, string>;
  /** What counts of each step. */
  steps: Array<PageStep>;
  /** Which steps each kind of car has for each job. */
  plans: Array<Plan>;
  /** What will do in the place of a tool, by tool. */
  instead: Record<string, Array<string>>;
}

/** Step of a page: What a page counts of a step. What is not there is 0 or none, minutes are not timed, and there is no wait. */
export interface PageStep {
  /** The name of the step in this record. */
  id: string;
  section: SectionId;
  /** How many pieces of work in it have no recorded time. */
  untimed?: number;
  /** What is needed besides the tools of its fasteners. */
  tools?: Array<string>;
  /** What is used up. */
  materials?: Array<Purchase>;
  /** What changes of the state: what, which one, and its new value. */
  turns?: Array<Array<string>>;
  /** How long it takes. */
  minutes?: number;
  /** How long to wait in s; null where nobody has recorded it. */
  wait?: number | null;
  /** Where in the car it is done; several where that differs between cars. */
  at?: Array<PagePlace>;
  /** Its fasteners. */
  lines?: Array<PageLine>;
}

/** Place of a page: A place of the picture of the car; in every car where no clauses are there. */
export interface PagePlace {
  /** The area with its side, as ids in the picture end. */
  place: string;
  clauses?: Clauses;
}

/** Fasteners of a page: What a page counts of fasteners. What is not there is none. */
export interface PageLine {
  /** What turns them. */
  tool?: string;
  /** All the tools of which any one will do. */
  either?: Array<string>;
  /** What is done with them. */
  fate: "out" | "back" | "moved" | "bagged" | "binned" | "new" | "leave";
  /** What takes the place of spent ones. */
  buy?: Array<Purchase>;
  clauses?: Clauses;
  /** What they add to the tally. */
  counts?: Array<PageCount>;
}

/** Count of a page: Fasteners of one sort, by what becomes of them. What is not there is 0. */
export interface PageCount {
  /** Which sort. */
  sort: string;
  /** How many come out. */
  out?: number;
  /** How many go back. */
  back?: number;
  /** How many go to the new gear. */
  moved?: number;
  /** How many are kept with the old part. */
  bagged?: number;
  /** How many are thrown away. */
  binned?: number;
  /** How many new ones go in. */
  new?: number;
  /** How many lines have no recorded number. */
  unrecorded?: number;
}

/** Forms of a page: What a page reckons with by opening, in its element `ut-fit-data`. */
export type Forms = Record<string, Form>;

/** VIN pattern: How a number begins, a full stop for any character, and which cars are of it. */
export interface VinPattern {
  /** The characters from the first on. */
  pattern: string;
  /** In which cars, in words; empty for all. */
  when: string;
  clauses: Clauses;
}

/** Facts at their addresses: Every fact of a record that can be said not to be so, in a script beside the pages of a vehicle, in the page of gear. */
export interface Claimable {
  /** Its address, make/id; empty where it is gear. */
  vehicle: string;
  /** Its id; empty where it is a vehicle. */
  gear: string;
  /** What facts are called, each once. */
  labels: Array<string>;
  /** What facts are of, in the order of the record. */
  things: Array<ClaimableThing>;
}

/** Thing with facts: A part, an opening, a plug or whatever else facts are of. */
export interface ClaimableThing {
  /** The keys that lead to it, with / between. */
  about: string;
  /** What it is called. */
  name: string;
  /** Each as a list: the keys below the thing, the place of its label among the labels, and its value as typed. */
  facts: Array<ClaimableFact>;
}

/** Fact at its address: The keys below its thing (empty for the thing itself), the place of its label, the value. */
export type ClaimableFact = [string, number, string];

/** Asked of a new car: What is asked of a car that no record has, screen by screen. */
export interface NewCar {
  /** In their order. */
  screens: Array<NewCarScreen>;
}

/** Screen: What is asked together. */
export interface NewCarScreen {
  /** Its name. */
  id: string;
  /** In a sentence. */
  ask: string;
  /** What it is for, or how it is seen. */
  why: string;
  /** What is answered. */
  fields: Array<NewCarField>;
}

/** Field of a new car: One answer about it. */
export interface NewCarField {
  /** As the claims file has it. */
  name: string;
  /** What it is called. */
  title: string;
  /** How it is answered. */
  form: "text" | "month" | "choice" | "choices";
  /** Whether no record begins without it. */
  must: boolean;
  /** So many letters at most; 0 where nothing is said of it. */
  most: number;
  /** The words that may be the answer. */
  choices: Array<AskedChoice>;
}

/** Asked of a car: What the record still wants to know, with all that is needed to answer without a signal. */
export interface Asked {
  /** Its address, make/id. */
  vehicle: string;
  /** The first and the last that may be said of a car of the record. */
  years: Array<number>;
  /** The first month, and the first that is not covered, counted from year 0. */
  built: Array<number>;
  /** Those to choose from; empty where there is one. */
  sides?: Array<string>;
  /** What to ask of the car before its questions. */
  variants?: Array<AskedVariant>;
  /** Those that values answer, the most useful first. */
  questions?: Array<AskedQuestion>;
  /** What takes more than values. */
  for_a_person?: Array<string>;
  /** Those of wires, where one is asked for. */
  colours?: Array<AskedColour>;
  /** Ids of those whose face is touched for an answer. */
  plugs?: Array<string>;
}

/** Variant to ask for: What sets cars of the record apart. */
export interface AskedVariant {
  id: Id;
  /** What to ask at the car. */
  ask: string;
  /** Its answers. */
  choices: Array<AskedCarChoice>;
}

/** Choice of a variant: One answer, and how to tell it. */
export interface AskedCarChoice {
  id: Id;
  /** What it is called. */
  label: string;
  /** Without taking anything off. */
  tell?: string;
  /** The first month, and the first after it, in which alone it was built, counted from year 0. */
  built?: Array<number>;
}

/** Question: What to find out. */
export interface AskedQuestion {
  /** In a sentence. */
  ask: string;
  /** Why it matters. */
  why: string;
  /** Whether it can hurt people, so that how it is known is asked for. */
  looked_up: boolean;
  /** The page of the handbook, with its section. */
  how?: string;
  /** The choices, by variant, of the cars that can answer it. */
  cars?: Record<string, Array<string>>;
  /** The same in words. */
  cars_words?: string;
  /** The values that answer it. */
  fields: Array<AskedField>;
}

/** Value to answer: One value that is asked for. */
export interface AskedField {
  /** The keys that lead to the fact, with / between. */
  about: string;
  /** What it is called. */
  title: string;
  /** What it says. */
  means: string;
  /** How it is answered. */
  form: "quantity" | "choice" | "choices" | "colour" | "pin" | "drive" | "number" | "text" | "there";
  /** Those to answer in. */
  units?: Array<AskedUnit>;
  /** The words that may be the answer. */
  choices?: Array<AskedChoice>;
  /** Whether there may be none. */
  none: boolean;
  /** What the record says so far. */
  stands?: string;
  /** Whether it may be left out. */
  optional: boolean;
  /** The answer beside which alone it is asked; null where it is asked whatever else is answered. */
  only_if?: AskedOnlyIf | null;
  /** The name of the drawing that shows how it is measured. */
  drawing?: string;
}

/** Unit to answer in: With the plausible range in it. */
export interface AskedUnit {
  /** As it is typed. */
  name: string;
  /** Whether people read fractions of it. */
  fractions: boolean;
  /** Below it nothing is plausible. */
  least: number | null;
  /** Above it nothing is plausible. */
  most: number | null;
}

/** Word to answer: A word of the schema. */
export interface AskedChoice {
  /** As it is typed. */
  word: string;
  /** What it is called. */
  says: string;
}

/** Only beside an answer: The answer beside which something is asked. */
export interface AskedOnlyIf {
  /** The other fact. */
  about: string;
  /** Its values. */
  words: Array<string>;
}

/** Colour to answer: A colour of insulation. */
export interface AskedColour {
  /** As it is typed. */
  name: string;
  /** Of IEC 60757, or declared by us. */
  letters: string;
  /** What it is called. */
  says: string;
  /** As #rrggbb. */
  hex: string;
}

/** Finder: One file of the finder: either all vehicles, or the names that stand in each piece, or one piece. */
export interface Finder {
  /** The vehicles. */
  rows?: Array<FinderRow>;
  /** What the vehicles of a piece are called, by piece: sorted names, each a digit (0 to z) that says how many letters it shares with the one before, and its other letters. */
  pieces?: Record<string, string>;
  /** In which pieces there are patterns of numbers that begin with three characters. */
  makers?: Record<string, Array<string>>;
  vin?: VinTable;
}

/** VIN table: How a vehicle identification number is read, as `record/data/vin.toml` has it. */
export interface VinTable {
  /** How many characters it has. */
  length: number;
  /** The characters that it may have. */
  alphabet: string;
  check: VinCheck;
  year: VinYear;
}

/** Check digit: What position 9 holds. */
export interface VinCheck {
  /** What the letters count. */
  values: Record<string, number>;
  /** By position. */
  weights: Array<number>;
  /** Where it stands, from 1. */
  position: number;
  /** The first characters of numbers for which it is certainly asked. */
  asking: string;
}

/** Model year: What position 10 stands for. */
export interface VinYear {
  /** Where it stands, from 1. */
  position: number;
  /** The characters, one for each year. */
  letters: string;
  /** The year of the first of them. */
  first: number;
  /** After so many years each stands for another. */
  again: number;
  /** Where a digit means the first span and a letter the second. */
  span_position: number;
  /** The bodies for which that is so, whatever they weigh. */
  passenger_cars: Array<string>;
}

/** Places: In which slices the openings of the collection stand, by the kind of gear that goes into them. */
export type Places = Record<string, Array<PlaceSlice>>;

/** Slice of places: As a list: its name, the make of its vehicles, and how many they are. */
export type PlaceSlice = [string, string, number];

/** Vehicles of a slice: The vehicles of one slice with their openings. */
export type PlacesSlice = Array<PlaceVehicle>;

/** Vehicle with places: A vehicle with its openings for one kind of gear. */
export interface PlaceVehicle {
  /** The vehicle as make/id. */
  address: string;
  /** Make, model and years. */
  title: string;
  /** Whether it is invented. */
  demo: boolean;
  /** Its questions by id, with the ids of their choices. */
  variants: Record<string, Array<string>>;
  /** The words for the choices, by question and choice. */
  labels: Record<string, Record<string, string>>;
  /** Those that gear of the kind goes into. */
  openings: Array<PlaceOpening>;
}

/** Opening of a place: An opening as it is reckoned with. */
export interface PlaceOpening {
  /** The opening. */
  id: string;
  /** The id that it is written under. */
  written: string;
  /** What it is called. */
  name: string;
  /** What kinds of gear may stand between there. */
  between: Array<string>;
  form: Form;
}

/** More to find: What is found besides vehicles, in files of their own: gear, the handbook with its words and rules, and beside each vehicle what is in that car. */
export interface FinderMore {
  /** What can be found. */
  entries?: Array<FinderEntry>;
}

/** Entry of the finder: As a list: its sort, what it is called, what is said of it, where it is (from the top of the site; beside a vehicle from its folder), and other words for it. */
export type FinderEntry = [string, string, string, string, string];

/** Row of the finder: A vehicle as a list: address, make, model, first year, last year, phase, other names, first month of build and the month before which the last was built, bodies, steering sides, how to tell it, what can be worked at (id, name, kind of gear or empty), patterns of its numbers with the choices that they leave, and whose it is. */
export type FinderRow = [string, string, string, number, number, string, Array<string>, string, string, Array<string>, Array<string>, string, Array<FinderJob>, Array<FinderVin>, string];

/** Job of the finder: What can be worked at: its id, its name, and the kind of gear that it takes (empty: it is only reached for). */
export type FinderJob = [string, string, string];

/** Pattern of the finder: A pattern, and the choices that it leaves of some variants, as data and in words. */
export type FinderVin = [string, Clauses, string];

/** Visit with the stock: What follows from a vehicle and the gear in stock that joins a receiver to it, as the page of a visit fetches it. */
export interface StockVisit {
  /** What can stop the job or costs the owner something, in order of weight. */
  blockers: Array<Blocker>;
  /** How each kit that suits is built up, by opening. */
  kits: Record<string, Array<KitWork>>;
}

/** Wiring with the stock: What follows from the same, as the page of the wiring fetches it. */
export interface StockWiring {
  /** What the factory unit also does, and what becomes of it. */
  duties: Array<StockDuty>;
  /** Each opening for a receiver with each lead set in stock. */
  joints: Array<StockJoint>;
  /** The wires of the joints, each once. */
  colours: Array<WireColour>;
}

/** Text of a record: A text; one in another language than the page's with that. */
export type Told = string | OwnWords;

/** Text in another language: A text of a record in another language than the page's. */
export interface OwnWords {
  /** The tag of the language. */
  lang: string;
  /** What it says. */
  text: string;
}

/** Duty with the stock: Something that the factory unit also does, and what becomes of it with the gear in stock. */
export interface StockDuty {
  /** The duty for people. */
  name: string;
  becomes: Told;
  conflicts: Disputes;
  /** The cars it is for, in words; empty for every one. */
  when: Told;
  clauses: Clauses;
}

/** Work on a kit: How a kit in stock is built up at the bench. */
export interface KitWork {
  id: Id;
  /** Maker and model. */
  name: string;
  /** The cars it is for, in words; empty for every one. */
  when: Told;
  clauses: Clauses;
  /** What to do, in order. */
  lines: Array<KitLine>;
}

/** Line of work on a kit: One thing to do. */
export interface KitLine {
  text: Told;
  /** The part of the car that moves over, in words; empty where none does. */
  moves: string;
  /** The cars it is for, in words; empty for every one. */
  when: Told;
  clauses: Clauses;
}

/** Joint: A lead set in stock joined to the car at one opening. */
export interface StockJoint {
  opening: Id;
  leads: Id;
  /** The lead set for people. */
  name: string;
  note: Told;
  /** The receivers that come with it, in words; empty for none. */
  receivers: string;
  /** The joint, once for each group of cars. */
  tables: Array<StockTable>;
}

/** Table of a joint: What is joined to what, in one group of cars. */
export interface StockTable {
  /** The kinds of car; none for every one. */
  cars: Array<Car>;
  /** The cars for people; empty for every one. */
  cars_words: Told;
  /** What plugs into the car, or that nothing does. */
  harness: string;
  /** Interfaces and converters, in words; empty for none. */
  between: string;
  /** The level at which the car takes its sound. */
  wants: string;
  /** How many rows have each state, in words. */
  counts: string;
  /** What is to be said of the whole. */
  notes: Array<string>;
  /** Contacts that meet nothing in the car. */
  extra: Array<string>;
  /** Pins of the car that no contact meets. */
  missing: Array<StockEnd>;
  /** Function by function. */
  rows: Array<StockRow>;
}

/** Row of a joint: One function with both its ends. */
export interface StockRow {
  /** The name of the row in this table. */
  id: string;
  /** How the two sides stand. */
  state: "never" | "conflict" | "interface" | "lead-alone" | "pin-alone" | "unknown" | "other-colour" | "joined";
  /** The same for people, behind its sign. */
  state_words: string;
  /** What it is for, in words. */
  function: string;
  /** Where the car has it. */
  car: Array<StockEnd>;
  /** Which contacts of the gear meet it. */
  contacts: Array<StockEnd>;
  /** The gear it goes through; empty for none. */
  through: string;
  /** The lead of the receiver; null for none. */
  lead: StockEnd | null;
  /** Why the two must never be joined as they are. */
  why: Array<string>;
  /** What is to be said of it, and what is noted of its ends. */
  said: string;
  /** What to do. */
  do: string;
}

/** End of a joint: One end of a row. */
export interface StockEnd {
  /** Plug and pin, the lead, or how the car has the function. */
  at: string;
  /** The address of its row among the pins of the car, on the page of the wiring; empty for none. */
  pin: string;
  /** The place of its colour in the list, from 0; null where there is no wire to speak of. */
  colour: number | null;
  /** What else is to be known of it: its voltage, its level, its fuse; empty for nothing. */
  more: string;
}

/** Wire colour: A colour of wire in words, with its picture. */
export interface WireColour {
  /** The colour for people, or that it is not recorded. */
  words: string;
  /** What a colour that cannot be read could mean; empty for one that can. */
  may_be: string;
  /** The id of its picture in a page; empty for one without. */
  id: string;
  /** What it is drawn of, in a box of 48 by 16, the lowest first. */
  shapes: Array<WireShape>;
}

/** Shape of a wire: One path of its picture. */
export interface WireShape {
  /** A path of SVG. */
  d: string;
  /** The colour inside; none for a line alone. */
  fill: string;
  /** The colour of its line; none for an area alone. */
  stroke: string;
  /** That of the line. */
  width: number;
}

/** Shelf: What all forms and choices of gear share, in the first file of the shelf. */
export interface Shelf {
  units: Units;
  electrical: Calculators;
  usual: Usual;
  /** Records of gear with problems: they are not offered. */
  left_out: Array<LeftOut>;
  stock: ShelfPiece;
  /** In which further files the gear of each kind stands; none where all of it stands here. */
  pieces: Record<string, Array<string>>;
}

/** Gear of a piece: Gear in the order of the stock. */
export type ShelfPiece = Array<ShelfGear>;

/** Gear on the shelf: A piece of gear in stock. */
export interface ShelfGear {
  id: Id;
  /** Maker and model. */
  name: string;
  /** What sort of gear. */
  kind: "amplifier" | "receiver" | "kit" | "harness" | "interface" | "converter" | "leads" | "speaker" | "spacer" | "tweeter" | "crossover";
  /** Its dimensions, and what it is to what it is joined with. */
  gear: AmplifierSizes | ReceiverSizes | KitSizes | HarnessSizes | InterfaceSizes | ConverterSizes | LeadsSizes | SpeakerSizes | SpacerSizes | TweeterSizes | CrossoverSizes;
  /** Minutes that fitting one takes; null where its record does not say. */
  fitting: number | null;
  /** What it is made for; nothing for any car. */
  suits: Array<ShelfPlace>;
  /** What fitting it does to the car. */
  alters: Array<string>;
  /** What keeps low tones away from a tweeter where nothing in stock does; empty for other gear. */
  to_get: string;
  /** What people saw who tried it in an opening; nothing where nobody did. */
  tried: Array<ShelfTried>;
  /** Its sizes that are in dispute, each with what is said of it and what is reckoned with. */
  doubts: Array<string>;
}

/** Look at gear in an opening: What somebody saw who tried it there. */
export interface ShelfTried {
  /** Where the vehicle is found. */
  vehicle: string;
  /** The id that the opening is written under. */
  opening: string;
  /** Whether it went in. */
  went_in: "yes" | "no";
  /** That in words, with who saw it when and at which car. */
  said: string;
}

/** Place that gear is for: An opening of a vehicle that gear is made for. */
export interface ShelfPlace {
  /** Where the vehicle is found. */
  vehicle: string;
  /** The id that the opening is written under. */
  opening: string;
  clauses: Clauses;
}

/** Left out: A record of gear that has problems. */
export interface LeftOut {
  /** What sort of gear. */
  kind: string;
  id: Id;
}

/** Units of length: How lengths are read and shown. */
export interface Units {
  /** What is measured. */
  name: string;
  /** How one is typed. */
  example: string;
  /** The units that are offered, by name. */
  offer: Array<string>;
  /** In which unit of the other system a length is shown too. */
  other: Array<OtherUnit>;
  /** The units by name. */
  units: Record<string, Unit>;
  /** The units of other kinds of quantity. */
  elsewhere: Array<Elsewhere>;
}

/** Other unit: In which unit of the other system a length is shown. */
export interface OtherUnit {
  /** The system it was typed in. */
  from: "metric" | "inch";
  /** The unit by name. */
  to: string;
  /** For lengths below this, in mm; for all where it is left out. */
  below?: number;
  /** How many decimals. */
  decimals: number;
}

/** Unit: A unit of length. */
export interface Unit {
  /** How many mm it is, as a number or a fraction. */
  factor: string;
  /** Whose unit it is. */
  system: "metric" | "inch";
  /** How it may be typed. */
  spellings: Array<string>;
  /** Whether capitals do not matter. */
  any_case?: boolean;
  /** Whether it may be typed in fractions. */
  fractions?: boolean;
  /** How many marks it has on a rule. */
  mark?: number;
}

/** Elsewhere: The units of another kind of quantity, to know them by. */
export interface Elsewhere {
  /** What they measure. */
  name: string;
  /** Spellings as they must be typed. */
  exact: Array<string>;
  /** Spellings where capitals do not matter. */
  any_case: Array<string>;
}

/** Usual clearances: The room that is usually left, by name, and the bounds of what is not recorded. */
export interface Usual {
  cooling: FitNumber;
  plug_room: FitNumber;
  sleeve: FitNumber;
  filler: FitNumber;
  rear: FitNumber;
  rear_glass: FitNumber;
  grille: FitNumber;
  overlap: FitNumber;
  bolts: FitNumber;
  tweeter_behind: FitNumber;
  tweeter_front: FitNumber;
  tweeter_rim: FitNumber;
  bounds: Bounds;
  amplifiers: UsualAmplifiers;
}

/** Usual of amplifiers: What the feed of amplifiers is reckoned with where nobody says otherwise. */
export interface UsualAmplifiers {
  /** From the distribution block to each, in m. */
  branch: number;
  /** Of the current at full power, the share taken on average. */
  music: number;
  /** Of the current on its plate, the share given by an alternator at idle. */
  idle: number;
  /** What the car itself takes, in A. */
  car: number;
  /** What a turn-on lead gives, in A. */
  turn_on: number;
}

/** Bounds: Between what an unrecorded fact lies, and what is heard. */
export interface Bounds {
  /** In degrees. */
  lean: number;
  /** In mm. */
  gasket: number;
  /** In dB. */
  heard: number;
}

/** Number of a fit: A number as the fit reckons with it. */
export interface FitNumber {
  /** What it is. */
  label: string;
  /** The number; null where it is not known. */
  value: number | null;
  /** How far it may be off. */
  step: number;
  /** The number as it is shown. */
  text: string;
  /** Whether it is a usual value that nobody measured here. */
  default: boolean;
  /** By how much it may be less. */
  less: number;
  /** By how much it may be more. */
  more: number;
  /** Whether it stands for a fact that is not recorded. */
  lacking: boolean;
}

/** Plug to meter: What the meter guide knows of a plug. */
export interface MeterPlug {
  id: Id;
  /** The plug for people. */
  name: string;
  /** Its contacts. */
  pins: Array<MeterPin>;
  /** Pins that were looked at and are empty. */
  blanks: Array<string>;
  /** Buttons that are read there. */
  ladders: Array<MeterLadder>;
  /** What says that nobody has seen it on this car, and from which it is taken. */
  taken: Array<string>;
}

/** Pin to meter: What the meter guide knows of a pin. */
export interface MeterPin {
  /** Its number on the plug. */
  id: string;
  function: Function;
  /** The function for people. */
  words: string;
  behaves: Behaves;
  /** In V, where it has one of its own; null where not. */
  supply: number | null;
  when: When;
}

/** Ladder to meter: Buttons that are read at a pin. */
export interface MeterLadder {
  id: Id;
  /** The pin by number. */
  pin: string;
  /** What it is read against. */
  against: string;
  when: When;
  /** Its buttons. */
  rungs: Array<Rung>;
}

/** Rung: A button with its band. */
export interface Rung {
  /** The button. */
  name: string;
  /** The least it shows, in ohm. */
  low: number;
  /** The most it shows, in ohm; null for no end. */
  high: number | null;
  /** Whether it is what no button shows. */
  idle: boolean;
}

/** Meter table: What a meter shows on which function, and how readings are typed. */
export interface MeterTable {
  /** How sure a band or pattern may be, the surest first. */
  order: Array<Sureness>;
  /** The same in words. */
  sure: Record<string, string>;
  /** The kinds of reading. */
  kind: Record<string, ReadingKind>;
  /** The units that may be typed. */
  unit: Array<MeterUnit>;
  grammar: Grammar;
  /** The states of the car in which is measured. */
  state: Record<string, MeterState>;
  /** Ranges of readings. */
  band: Record<string, Band>;
  /** Which bands a sort of wire shows. */
  pattern: Record<string, MeterPattern>;
  /** What to call all functions of a group. */
  together: Record<string, string>;
  /** What wires may be for. */
  function: Record<string, MeterFunction>;
  /** What a wire may be besides. */
  suspect: Record<string, Suspect>;
  /** What to mind with a meter. */
  caution: Record<string, MeterCaution>;
  ladder: LadderLimits;
}

/** Sureness: What a band or pattern rests on. */
export type Sureness = "physics" | "standard" | "practice" | "memory";

/** Kind of reading: What a meter can be set to. */
export interface ReadingKind {
  /** The kind for people. */
  words: string;
  /** Its unit. */
  unit: "V" | "ohm";
  /** Whether there must be no voltage. */
  dead?: boolean;
}

/** Unit of a meter: A unit that may be typed. */
export interface MeterUnit {
  /** What it is a unit of. */
  measures: "V" | "ohm";
  /** How many tens it is of that. */
  ten: number;
  /** Spellings as they must be typed. */
  exact: Array<string>;
  /** Spellings where capitals do not matter. */
  any_case: Array<string>;
  /** Whether it says that the reading is AC. */
  ac?: boolean;
  /** Whether it says that the reading is DC. */
  dc?: boolean;
}

/** Grammar: The words of a typed reading. */
export interface Grammar {
  /** Words for no connection. */
  open: Array<string>;
  /** Words that say nothing. */
  filler: Array<string>;
  /** Words for across the pair. */
  pair: Array<string>;
  /** Words for against ground. */
  ground: Array<string>;
  /** Words for AC. */
  ac: Array<string>;
  /** Words for DC. */
  dc: Array<string>;
}

/** State to measure in: A state of the car in which is measured. */
export interface MeterState {
  /** The state for people. */
  words: string;
  /** The same in short. */
  name: string;
  /** What may be typed for it. */
  says: Array<string>;
  /** Whether ohms tell something. */
  ohms: boolean;
  /** Whether a voltage then is there at all times. */
  rest?: boolean;
  /** States that may be named with it. */
  beside: Array<string>;
}

/** Band: A range of readings. */
export interface Band {
  /** What it means. */
  words: string;
  /** The least, in V or ohm. */
  low: number;
  /** The most; no end where it is left out. */
  high?: number;
  sure: Sureness;
  /** Whether it goes with the voltage of the battery. */
  of_battery?: boolean;
}

/** Pattern: Which bands a sort of wire shows. */
export interface MeterPattern {
  /** The sort of wire. */
  words: string;
  /** How such a wire may work. */
  behaves: Array<string>;
  sure: Sureness;
  /** The band of volts by state. */
  volts: Record<string, string>;
  /** The band of ohms by state. */
  ohms?: Record<string, string>;
  /** The band across the pair by state. */
  pair?: Record<string, string>;
  /** The band of AC by state. */
  ac?: Record<string, string>;
  /** The state without which it looks like another. */
  needs?: string;
}

/** Function to meter: What a wire may be for. */
export interface MeterFunction {
  /** The function for people. */
  words: string;
  /** What it belongs to. */
  group: string;
  /** Into the radio, out of it, or both. */
  direction: string;
  /** The sorts of wire it may be. */
  patterns: Array<string>;
  /** What to mind with it. */
  care: Array<string>;
  /** How else such a wire may work. */
  also?: Array<string>;
}

/** Suspect: What a wire may be besides the functions of a radio. */
export interface Suspect {
  /** What it may be. */
  words: string;
  /** What to do then. */
  do: string;
  /** When it is thought of. */
  where: "unexplained" | "instead" | "unrecorded" | "lone";
  /** Whether nothing more may be measured. */
  stop?: boolean;
  /** The bands that bring it in, by kind of reading. */
  reads: Record<string, Array<string>>;
  /** Whether only where no voltage was met. */
  dead?: boolean;
  /** The bands that the record led to expect. */
  expects?: Array<string>;
  /** The states in which the reading counts. */
  states?: Array<string>;
  /** The groups of functions it is thought of for. */
  groups?: Array<string>;
}

/** Caution of a meter: What to mind with a meter. */
export interface MeterCaution {
  /** What to mind. */
  text: string;
  /** When it is said. */
  needs: string;
}

/** Limits of ladders: Where a resistance counts as open, as nothing, or as little more than leads. */
export interface LadderLimits {
  /** In ohm. */
  open_from: number;
  /** In ohm. */
  zero_to: number;
  /** In ohm. */
  leads_below: number;
}

/** Tables of electrical sums: What electrical sums rest on: on the shelf, and in the element `ut-electrical` of the page of calculators. */
export interface Calculators {
  /** How numbers are shown, by unit. */
  print: Record<string, Array<PrintRow>>;
  defaults: Defaults;
  cable: Cables;
  ampacity: Ampacity;
  fuses: Fuses;
}

/** Printed unit: How a number of a unit is shown. */
export interface PrintRow {
  /** For numbers below this; for all where it is left out. */
  below?: number;
  /** What it is multiplied with. */
  scale: number;
  /** The unit as it is shown in every language. */
  symbol?: string;
  /** Where it is shown by a word instead: what the script calls that. */
  word?: string;
  other?: PrintOther;
}

/** Other printed unit: The same number in another unit. */
export interface PrintOther {
  /** What it is multiplied with. */
  scale: number;
  /** What is added. */
  offset?: number;
  /** The unit as it is shown in every language. */
  symbol?: string;
  /** Where it is shown by a word instead: what the script calls that. */
  word?: string;
}

/** Usual values: Usual values, and the bounds of what is typed. */
export interface Defaults {
  /** The usual values by name, in SI units. */
  usual: Record<string, number>;
  sound: SoundSpeed;
  /** Preferred values of one decade, by series. */
  series: Record<string, Array<number>>;
  /** What may be typed, by name. */
  bounds: Record<string, Bound>;
}

/** Speed of sound: How fast sound is in air. */
export interface SoundSpeed {
  /** In m/s. */
  speed: number;
  /** At this temperature, in °C. */
  at: number;
}

/** Bound: What may be typed for a number. */
export interface Bound {
  /** What it is. */
  label: string;
  /** Its unit. */
  unit: string;
  /** The least. */
  least: number;
  /** The most. */
  most: number;
}

/** Cables: Conductors and their sizes. */
export interface Cables {
  copper: Copper;
  /** Resistance against copper of the same area. */
  metals: Record<string, number>;
  body: BodyReturn;
  awg: AwgSizes;
  sae: SaeSizes;
  metric: MetricSizes;
}

/** Copper: Copper at a temperature. */
export interface Copper {
  /** In ohm mm²/m. */
  resistivity: number;
  /** How much more for each °C, as a share. */
  alpha: number;
  /** At this temperature, in °C. */
  at: number;
}

/** Body: The body of the car as a way back. */
export interface BodyReturn {
  /** In ohm, with its joints. */
  resistance: number;
}

/** AWG sizes: Sizes in AWG. */
export interface AwgSizes {
  /** Where they come from. */
  origin: string;
  /** The sizes that are offered. */
  sizes: Array<string>;
}

/** SAE sizes: Sizes of SAE cables. */
export interface SaeSizes {
  /** Where they come from. */
  origin: string;
  /** The sizes that are offered. */
  sizes: Array<SaeSize>;
}

/** SAE size: A size of SAE cables. */
export interface SaeSize {
  /** The size. */
  name: string;
  /** Its area. */
  cmil: number;
}

/** Metric sizes: Metric sizes. */
export interface MetricSizes {
  /** Where they come from. */
  origin: string;
  /** The sizes that are offered. */
  sizes: Array<MetricSize>;
}

/** Metric size: A metric size. */
export interface MetricSize {
  /** Its area in mm². */
  name: string;
  /** In ohm per km. */
  ohm_per_km: number;
}

/** Ampacity: What cables may carry. */
export interface Ampacity {
  /** Where it comes from. */
  origin: string;
  /** What the insulation bears in °C, by column. */
  insulation: Array<number>;
  /** The current in A by column, by AWG size. */
  gauges: Record<string, Array<number>>;
  engine: EngineSpace;
}

/** Engine space: What is left of it in an engine space. */
export interface EngineSpace {
  /** The share that is left, by column. */
  factors: Array<number>;
  /** The columns whose factor does not come from memory. */
  sure: Array<number>;
}

/** Fuses: Fuses and how they are chosen. */
export interface Fuses {
  load: FuseLoad;
  place: FusePlace;
  /** The families of fuses, by id. */
  families: Record<string, FuseFamily>;
}

/** Load of a fuse: How much of a fuse is used. */
export interface FuseLoad {
  /** At most this share of its rating. */
  share: number;
}

/** Place of a fuse: Where a fuse goes. */
export interface FusePlace {
  /** In m of cable from the source. */
  within: number;
}

/** Family of fuses: Fuses of one shape. */
export interface FuseFamily {
  /** The family for people, within a sentence. */
  name: string;
  /** The family for people, over its table. */
  title: string;
  /** Whether its ratings do not come from memory. */
  sure: boolean;
  /** Its ratings. */
  ratings?: Array<FuseRating>;
  /** The family whose ratings it shares, by id. */
  same?: string;
  /** Of these, the least in A. */
  least?: number;
  /** Of these, the most in A. */
  most?: number;
}

/** Rating of a fuse: A rating and its colour. */
export interface FuseRating {
  /** The rating. */
  amps: number;
  /** Its colour; empty for none. */
  colour: string;
}

/** Place for an amplifier: The dimensions of a place for an amplifier, and what is there for it. */
export interface AmplifierPlace {
  /** The free box; null where it is not recorded. */
  space: Sides | null;
  /** The narrowest passage on the way; null where it is not recorded. */
  way_in: Face | null;
  /** Whether air can move there; empty where nothing is recorded. */
  air: string;
  /** Where the ground goes; null where it is not recorded. */
  ground_point: GroundPoint | null;
  /** Where the main fuse goes; null where it is not recorded. */
  fuse_place: MainFusePlace | null;
  /** The level of sound that is there; empty for what the radio sends. */
  finds: string;
  /** What tells that the sound is on; empty where nothing is recorded. */
  switched_on_by: string;
  /** The channels that an amplifier there is joined to; none where nothing is said. */
  powers: Array<string>;
}

/** Ground point: Where the ground of an amplifier goes. */
export interface GroundPoint {
  /** Where it is. */
  at: string;
  /** Whether paint is on it; null where nothing is recorded. */
  paint: string | null;
  /** What turns its nut; empty where nothing is recorded. */
  nut: string;
  length: Given;
}

/** Place of the main fuse: Where the main fuse of a cable goes. */
export interface MainFusePlace {
  /** Where it is. */
  at: string;
  from_battery: Given;
}

/** Sides of a box: A box by its three sides as they were measured. */
export interface Sides {
  width: Given;
  height: Given;
  depth: Given;
}

/** Sizes of an amplifier: The dimensions of an amplifier, what it takes, and what it is to what it is joined with. */
export interface AmplifierSizes {
  /** With its terminals; null where it is not recorded. */
  size: Sides | null;
  cooling: Given;
  /** How many outputs it has. */
  channels: number;
  least_load: Given;
  bridged_load: Given;
  /** What it gives and takes at full power; null where it is not recorded. */
  rated: Rated | null;
  /** The levels that it takes. */
  inputs: Array<string>;
  /** What switches it on. */
  wakes_by: Array<string>;
  turn_on_draws: Given;
}

/** Rated: What an amplifier gives and takes at full power. */
export interface Rated {
  power: Given;
  efficiency: Given;
  current: Given;
}

/** Bay: The free box of a place for an amplifier, with the amplifier in it, from above and from the front. */
export interface Bay {
  /** What is drawn. */
  title: string;
  space: Box;
  /** The amplifier by name; empty for none. */
  gear: string;
  /** The amplifier as it is turned; null without one. */
  box: Box | null;
}

/** Box: A box by its three sides. */
export interface Box {
  width: Measure;
  height: Measure;
  depth: Measure;
}

/** Dash: A receiver in its opening. */
export interface Dash {
  /** What is drawn. */
  title: string;
  face: Frame;
  /** The kit it goes into, by name; empty for none. */
  kit: string;
  /** Null where there is no kit. */
  kit_opening: Frame | null;
  /** The room before the dash; null where it is not recorded. */
  clear_front: Frame | null;
  /** The receiver by name; empty for none. */
  gear: string;
  /** The chassis; null where it is not recorded. */
  body: Frame | null;
  /** What stands before the dash; null where it is not recorded. */
  trim: Frame | null;
  clear: Measure;
  /** What is met first behind the opening. */
  behind: string;
  chassis: Measure;
  plug_room: Measure;
  /** What is left over behind the chassis, in words; empty without gear. */
  margin: string;
  /** Whether it strikes what is behind. */
  strikes: boolean;
  /** Sentences to stand below. */
  more: Array<string>;
}

/** Place for a receiver: The dimensions of an opening for a receiver. */
export interface ReceiverPlace {
  /** Null where it is not recorded. */
  face: Face | null;
  /** The room before the dash; null where it is not recorded. */
  clear_front: Face | null;
  /** Whether a dash kit is needed; empty where nothing is recorded. */
  kit: "" | "needed" | "not-needed" | "unknown";
  /** Null where it is not recorded. */
  depth: Depth | null;
}

/** Sizes of a receiver: The dimensions of a receiver. */
export interface ReceiverSizes {
  /** The chassis. */
  body: Face | null;
  /** What stands before the dash. */
  trim: Face | null;
  chassis_depth: Given;
  plug_room: Given;
  least_load: Given;
  /** The lead set that it comes with, by id; empty where nothing is recorded. */
  lead_set: string;
  /** The levels that it sends. */
  outputs: Array<string>;
  /** The functions that it wants from the car. */
  needs: Array<string>;
  /** The duties of a factory unit that it does by itself. */
  keeps: Array<string>;
}

/** What a harness joins: What a harness is to what it is joined with. */
export interface HarnessSizes {
  /** The functions on its contacts. */
  brings: Array<string>;
  /** The duties of a factory unit that it keeps. */
  keeps: Array<string>;
}

/** What an interface joins: What an interface is to what it is joined with. */
export interface InterfaceSizes {
  /** The functions that it provides. */
  brings: Array<string>;
  /** The duties of a factory unit that it keeps. */
  keeps: Array<string>;
  /** The level of sound that it gives; empty for none. */
  gives: string;
}

/** What a converter joins: What a converter is to what it is joined with. */
export interface ConverterSizes {
  /** The level of sound that it takes. */
  takes: string;
  /** The level of sound that it gives. */
  gives: string;
  /** Whether it makes a turn-on of the signal; null where nothing is recorded. */
  makes_turn_on: string | null;
}

/** What a lead set has: What a lead set is to what it is joined with. */
export interface LeadsSizes {
  /** The functions that it has a lead for. */
  functions: Array<string>;
  /** What its leads give, where it says so. */
  limits: Array<LeadLimit>;
}

/** Limit of a lead: The most that a lead of a function gives. */
export interface LeadLimit {
  /** The function by its id. */
  function: string;
  limit: Given;
}

/** Sizes of a kit: The dimensions of a dash kit. */
export interface KitSizes {
  /** What the receiver goes into. */
  opening: Face | null;
  /** What is in the box. */
  contains: Array<string>;
}

/** Section: A speaker's opening cut along its axis. */
export interface Cut {
  /** What is drawn. */
  title: string;
  clear: Measure;
  room: Measure;
  hole: Measure;
  /** The face from which the depth counts. */
  datum: "skin" | "bracket" | "other";
  /** The same for people. */
  datum_name: string;
  /** What is met first behind the opening. */
  behind: string;
  /** What is met first in front. */
  front: string;
  /** The angle of what is behind, in degrees; null where there is none or it is not known. */
  lean: number | null;
  /** How it is written; empty where there is none. */
  lean_text: string;
  /** The factory bracket; null where there is none. */
  bracket: Measure | null;
  /** Whether the bracket stays on. */
  bracket_stays: boolean;
  /** What goes between; null for nothing. */
  spacer: Measure | null;
  /** What it is called. */
  spacer_name: string;
  /** The gasket of the speaker; null for none. */
  gasket: Measure | null;
  /** The speaker in it; null for none. */
  speaker: DrawnSpeaker | null;
  /** Null where it was not reckoned. */
  margin_behind: DrawnMargin | null;
  /** Null where it was not reckoned. */
  margin_front: DrawnMargin | null;
  /** What lies on the side of the cabin. */
  near: string;
  /** What lies behind. */
  far: string;
  /** Sentences to stand below. */
  more: Array<string>;
}

/** Front: A speaker's opening from the cabin. */
export interface Front {
  /** What is drawn. */
  title: string;
  hole: Outline;
  /** The bolt holes of the car; null where they are not recorded. */
  bolts: Pattern | null;
  /** The flat panel round the hole; null where it is not recorded. */
  panel: Outline | null;
  /** The speaker by name; empty for none. */
  gear: string;
  /** What passes through the hole; null where it is not recorded. */
  basket: Outline | null;
  /** The rim that covers the hole; null where it is not recorded. */
  flange: Outline | null;
  /** Null where they are not recorded. */
  gear_bolts: Pattern | null;
  /** Whether the gear is turned by 90 degrees. */
  turned: boolean;
  /** Sentences to stand below. */
  more: Array<string>;
}

/** Drawn speaker: A speaker in section. */
export interface DrawnSpeaker {
  /** Maker and model. */
  name: string;
  depth: Measure;
  protrusion: Measure;
  flange: Measure;
  basket: Measure;
  magnet: Measure;
}

/** Place for a speaker: The dimensions of an opening for a speaker. */
export interface SpeakerPlace {
  /** Null where it is not recorded. */
  hole: Shape | null;
  /** Null where they are not recorded. */
  bolts: Bolts | null;
  /** The flat panel round the hole; null where it is not recorded. */
  panel: Face | null;
  /** Null where it is not recorded. */
  depth: Depth | null;
  room_to_grille: Given;
  factory_spacer: Given;
  impedance: Given;
  /** Whether the door fires the side airbags by its air pressure; null where nothing is recorded. */
  crash_sensor: Known | null;
  /** Whether the opening is in a door. */
  in_a_door: boolean;
  /** The area of the car; empty where it is not recorded. */
  area: string;
}

/** Sizes of a speaker: The dimensions of a speaker. */
export interface SpeakerSizes {
  /** What passes through the hole. */
  basket: Shape | null;
  /** The rim that covers the hole. */
  flange: Shape | null;
  /** Its bolt holes. */
  bolts: Bolts | null;
  depth: Given;
  magnet: Given;
  protrusion: Given;
  gasket: Given;
  impedance: Given;
}

/** Sizes of a spacer: The dimensions of a spacer. */
export interface SpacerSizes {
  thickness: Given;
  /** What the speaker goes into. */
  hole: Shape | null;
  /** The holes for the speaker. */
  bolts: Bolts | null;
  /** The holes for the car. */
  car_bolts: Bolts | null;
  /** Its rim. */
  flange: Shape | null;
}

/** Place for a tweeter: The dimensions of an opening for a tweeter, and how it is fed. */
export interface TweeterPlace {
  /** How a tweeter is held there; empty where nothing is recorded. */
  mount: "" | "flush" | "surface" | "angled" | "unknown";
  /** The cup in the trim; null for none. */
  cup: TweeterCup | null;
  cut_out: Given;
  flat: Given;
  /** Null where it is not recorded. */
  depth: Depth | null;
  room_in_front: Given;
  /** How the factory's is fed; empty where nothing is recorded. */
  feed: string;
  corner: Given;
  /** Where a crossover can go; null where nothing is recorded. */
  crossover_place: CrossoverPlace | null;
}

/** Cup: A moulded cup in the trim. */
export interface TweeterCup {
  diameter: Given;
  depth: Given;
}

/** Place of a crossover: Where a crossover can go, with its room. */
export interface CrossoverPlace {
  /** Where it is. */
  at: string;
  width: Given;
  height: Given;
  depth: Given;
}

/** Sizes of a tweeter: The mounts of a tweeter, and what must keep the low tones away from it. */
export interface TweeterSizes {
  /** The ways to mount it that come with it. */
  mounts: Array<TweeterMount>;
  impedance: Given;
  /** The filter that it must have; null where nothing is recorded. */
  high_pass: TweeterHighPass | null;
  /** What is in the box besides. */
  comes_with: Array<string>;
}

/** Mount of a tweeter: One way to mount a tweeter. */
export interface TweeterMount {
  /** How it is held. */
  mount: "flush" | "surface" | "angled";
  diameter: Given;
  depth: Given;
  over: Given;
  rim: Given;
}

/** High-pass of a tweeter: The filter that a tweeter must have, and the power at which that holds. */
export interface TweeterHighPass {
  frequency: Given;
  /** How steep it is. */
  filter_order: "first" | "second" | "third" | "fourth";
  power: Given;
}

/** Sizes of a crossover: The box of a crossover, and what it does. */
export interface CrossoverSizes {
  /** Its outside; null where nothing is recorded. */
  box: GivenBox | null;
  impedance: Given;
  frequency: Given;
  /** How steep it is. */
  filter_order: string;
}

/** Box: The outside of something that may lie in any way. */
export interface GivenBox {
  width: Given;
  height: Given;
  depth: Given;
}

/** Rings: A tweeter's place from the front: round outlines about one middle. */
export interface Rings {
  /** What the picture shows. */
  title: string;
  /** The outlines that are measured. */
  rings: Array<DrawnRing>;
  /** Sentences to stand below. */
  more: Array<string>;
}

/** Drawn ring: One round outline. */
export interface DrawnRing {
  /** What it is of. */
  part: "cut-out" | "cup" | "flat" | "body" | "rim";
  /** The same for people. */
  words: string;
  across: Measure;
}
