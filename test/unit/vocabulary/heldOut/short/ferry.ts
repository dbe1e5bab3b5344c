import type { Short } from './short';

/** A default namespace, ranges that are single keys, milliseconds, what starts a region in words. */
export const ferry: Short = {
  text: `<ferry xmlns="urn:example:ferry">
  <deck id="7" colour="#ff0000" created="2020-01-02">
    <car>
      <load path="../decks/horn.wav"/>
      <keys>C3 - E3</keys><tuning>0.25</tuning>
      <playing from="0 ms" to="1950.5 ms" reverse="off" trigger="note on"/>
      <fade attack="5 ms" release="120 ms"/>
    </car>
    <car>
      <load path="../decks/bell.wav"/>
      <keys>F3</keys><tuning>-0.5</tuning>
      <playing from="12 ms" to="800 ms" reverse="on" trigger="note off"/>
      <fade attack="0 ms" release="40 ms"/>
    </car>
  </deck>
</ferry>
`,
  regions: [
    {
      sample: '../decks/horn.wav',
      lokey: 48,
      hikey: 52,
      tune: 25,
      offset: 0,
      end: 86017,
      direction: 'forward',
      trigger: 'attack',
      ampeg_attack: 0.005,
      ampeg_release: 0.12,
    },
    {
      sample: '../decks/bell.wav',
      lokey: 53,
      hikey: 53,
      tune: -50,
      offset: 529,
      end: 35280,
      direction: 'reverse',
      trigger: 'release',
      ampeg_attack: 0,
      ampeg_release: 0.04,
    },
  ],
  open: ['middleC', 'end.last'],
};
