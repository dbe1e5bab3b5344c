/** A place where documents leave open what a player does, or disagree, with what is done here and why. */
export interface PlayingChoice {
  /** The opcodes or messages that it is about. */
  about: string;
  /** What is done, as a sentence. */
  choice: string;
  reason: string;
  /** What the documents say and where, or that it is common practice. */
  source: string;
}

/** Least value of a pedal's controller at which it is down, where `sustain_lo` or `sostenuto_lo` do not say. */
export const pedalDownFrom = 64;

/** Controllers that do not start at 0 unless `set_ccN` says so: volume, pan and expression. */
export const controllerDefaults: Readonly<Record<number, number>> = { 7: 100, 10: 64, 11: 127 };

/** The velocity of regions that a controller starts. */
export const controllerVelocity = 127;

/** The tempo where nothing tells it, in beats a minute. */
export const defaultTempoBpm = 120;

/** Controllers beyond those of MIDI, by what they hold. */
export const noteControllers = {
  bend: 128,
  channelPressure: 129,
  polyPressure: 130,
  velocity: 131,
  releaseVelocity: 132,
  key: 133,
  gate: 134,
  random: 135,
  alternate: 137,
} as const;

/** Channel mode messages: all sound off, all notes off. */
export const allSoundOff = 120;
export const allNotesOff = 123;

const format = 'public documentation of the open SFZ format';

/** Every choice that the player makes where documents leave it open, by a name of its own. */
export const playingChoices = {
  pedalDown: {
    about: 'sustain_lo, sostenuto_lo',
    choice: `A pedal is down from ${pedalDownFrom} on, unless sustain_lo or sostenuto_lo say otherwise.`,
    reason: 'Pedals that send all values would hold notes at the slightest touch.',
    source: `MIDI 1.0: 0 to 63 is off, 64 to 127 on; ${format}, sustain_lo: 0.5 by default`,
  },
  firstControllers: {
    about: 'set_ccN, loccN, hiccN',
    choice: 'Controllers start at 0, but 7 (volume) at 100, 10 (pan) at 64 and 11 (expression) at 127.',
    reason: 'These are the values at which a part sounds as it was made.',
    source: 'common practice; General MIDI 2 resets volume, pan and expression so',
  },
  switchZone: {
    about: 'sw_lokey, sw_hikey',
    choice:
      'Where neither is set, the keys that sw_last, sw_lolast and sw_hilast name under the same setting are the keyswitches.',
    reason: 'With the documented range of all keys the first note played would undo the keyswitch.',
    source: `${format}, sw_lokey: 0 to 127 by default; common practice`,
  },
  switchFirst: {
    about: 'sw_last, sw_down, sw_up',
    choice: 'A key that is struck is down, and is a keyswitch, before the regions that it starts are chosen.',
    reason: 'A region on the keyswitch itself is then chosen by it.',
    source: 'common practice',
  },
  switchOffset: {
    about: 'sw_note_offset, sw_octave_offset',
    choice: 'They move keyswitches on top of note_offset and octave_offset.',
    reason: 'The keyboard is moved as a whole first.',
    source: `${format} says no more than that they move keyswitches`,
  },
  turns: {
    about: 'seq_length, seq_position',
    choice:
      'Each region counts the strikes, releases or messages that meet all its other conditions, chance among them.',
    reason:
      'Layers and articulations then keep round robins of their own, and no step is lost while another one plays.',
    source: `${format}, seq_position: which conditions count is open`,
  },
  oneRandomNumber: {
    about: 'lorand, hirand',
    choice: 'One random number a strike, release or message serves all regions.',
    reason: 'Regions that share out the numbers then alternate without gaps and without sounding together.',
    source: 'the format as first published; one player draws for each region',
  },
  deadNotes: {
    about: 'rt_dead, trigger=release, trigger=release_key',
    choice:
      'With rt_dead=off a release region sounds while any voice that its note started does; a note that started none counts as sounding.',
    reason: 'What was never started cannot have died away, so instruments of release samples alone sound.',
    source: `${format}, rt_dead; players differ`,
  },
  decayStages: {
    about: 'rt_decay, rt_decayN, rt_decayN_time',
    choice: 'Stages take the place of rt_decay; the last one has no end.',
    reason: 'Both at once would take away twice.',
    source: `${format} gives the names alone`,
  },
  firstAndLegato: {
    about: 'trigger=first, trigger=legato',
    choice: 'Keys count that are down, keyswitches among them; notes that a pedal holds do not.',
    reason: 'That is what the words say.',
    source: `${format}, trigger: keys that are held`,
  },
  sostenuto: {
    about: 'sostenuto_sw',
    choice:
      'The pedal holds the notes whose keys are down as it goes down, not those that the sustain pedal holds.',
    reason: 'That is how the pedal of a piano works.',
    source: 'MIDI 1.0, controller 66; common practice',
  },
  pedalUp: {
    about: 'sustain_sw, trigger=release',
    choice: 'Notes that a pedal held are let go in the order in which their keys were.',
    reason: 'Releases then sound in the order of playing.',
    source: 'common practice',
  },
  controllerStart: {
    about: 'on_loccN, on_hiccN',
    choice: `A message starts the region on entering the range, at velocity ${controllerVelocity} and its root key; no key does. Its ranges of keys and velocities do not count, and no note-off ends it.`,
    reason:
      'A controller that moves within the range would start it at each step; it has no key and no velocity.',
    source: `${format}, on_loccN; common practice`,
  },
  controllerStop: {
    about: 'stop_loccN, stop_hiccN',
    choice: 'A message that enters the range lets the voices of the region go as if their note ended.',
    reason: 'The format has off_mode for the silencing by others alone.',
    source: `${format} says no more than that it stops`,
  },
  ownLayers: {
    about: 'off_by, polyphony, note_polyphony',
    choice: 'Voices that one strike, release or message starts never end one another.',
    reason: 'An instrument of layers in one group would silence itself.',
    source: 'common practice',
  },
  notSilenced: {
    about: 'off_by',
    choice: 'A region without off_by, or with off_by=0, is silenced by no group.',
    reason: 'Group 0 is that of all regions without a number.',
    source: `${format}, off_by; players differ`,
  },
  soundlessStart: {
    about: 'end=-1, sample',
    choice:
      'A region that is triggered but has nothing to sound silences others by its group and counts its turns; it takes no voice.',
    reason: 'That is what end=-1 is for; a lost sample should not let other voices ring on.',
    source: `${format}, end and off_by; common practice for lost samples`,
  },
  polyphonyScope: {
    about: 'polyphony',
    choice:
      'It counts the voices of the group where the region has one, else those of the regions that take it from the same header; released ones count, and the oldest end by their off_mode.',
    reason: 'A bound on voices is a bound on what sounds.',
    source: `${format}, polyphony: per header or group; which voice ends is common practice`,
  },
  notePolyphonyScope: {
    about: 'note_polyphony',
    choice:
      'It counts the voices of a key within the group that strikes started; release regions neither count nor end others.',
    reason: 'It is about striking a key again; the release belongs to the strike that it ends.',
    source: `${format}, note_polyphony, note_selfmask`,
  },
  noteOffInDelay: {
    about: 'delay',
    choice: 'A note that is let go before its delay is over does not sound; loop_mode=one_shot does.',
    reason: 'one_shot ignores that a key is let go.',
    source: `${format}, delay; one player does so for one_shot`,
  },
  timer: {
    about: 'lotimer, hitimer',
    choice:
      'They measure from the last start of a region of the group to the strike; before any the time is endless.',
    reason: 'Layers of one strike start together.',
    source: `${format} says no more than the time between`,
  },
  noPreviousVelocity: {
    about: 'sw_vel',
    choice:
      'Without a note before, sw_vel=previous takes the velocity of the note itself; it never chooses regions.',
    reason: 'There is no other.',
    source: `${format}, sw_vel: for the volume`,
  },
  furtherControllers: {
    about: 'loccN, hiccN from N = 128',
    choice:
      'Bend is 128, channel aftertouch 129, key aftertouch 130, velocity 131, release velocity 132, key 133, gate 134, a random number 135, and 137 changes between 0 and 127 from note to note.',
    reason: 'Instruments ask for them as for other controllers.',
    source: `${format}, extended controllers, from memory`,
  },
  tempo: {
    about: 'lobpm, hibpm',
    choice: `The tempo is ${defaultTempoBpm} where nothing tells it.`,
    reason: 'It is that of a MIDI file without a tempo.',
    source: 'Standard MIDI Files 1.0, set tempo',
  },
  modeMessages: {
    about: 'controllers 120 and 123',
    choice: 'All sound off ends all voices fast; all notes off lets all keys go, and pedals still hold.',
    reason: 'They are no controllers.',
    source: 'MIDI 1.0, channel mode messages',
  },
  reasonNames: {
    about: 'lochan, loprog, lobpm, lotimer',
    choice: 'Channel and program are told as the reason "controller", tempo and timer as "trigger".',
    reason: 'The reasons have fixed names for scripts; the message says which it was.',
    source: 'our choice',
  },
} as const satisfies Readonly<Record<string, PlayingChoice>>;
