import type { Short } from './short';

/** German: a number that counts the regions, high keys before low ones, a place between left and right. */
export const uhrwerk: Short = {
  text: `<Uhrwerk ausgabe="3"><Raeder>
  <Rad nr="1" klang="gong_c5.wav" oberste="74" unterste="71" grund="72" laut_min="1" laut_max="127" pegel_db="-3,5" lage="-25" stimmung="+14"/>
  <Rad nr="2" klang="gong_f5.wav" oberste="79" unterste="75" grund="77" laut_min="1" laut_max="127" pegel_db="0,0" lage="25" stimmung="-37"/>
  <Rad nr="3" klang="gong_b5.wav" oberste="84" unterste="80" grund="82" laut_min="1" laut_max="127" pegel_db="1,0" lage="0" stimmung="0"/>
</Raeder></Uhrwerk>
`,
  regions: [
    {
      lovel: 1,
      hivel: 127,
      sample: 'gong_c5.wav',
      hikey: 74,
      lokey: 71,
      pitch_keycenter: 72,
      volume: -3.5,
      pan: -25,
      tune: 14,
    },
    {
      lovel: 1,
      hivel: 127,
      sample: 'gong_f5.wav',
      hikey: 79,
      lokey: 75,
      pitch_keycenter: 77,
      volume: 0,
      pan: 25,
      tune: -37,
    },
    {
      lovel: 1,
      hivel: 127,
      sample: 'gong_b5.wav',
      hikey: 84,
      lokey: 80,
      pitch_keycenter: 82,
      volume: 1,
      pan: 0,
      tune: 0,
    },
  ],
  open: [],
};
