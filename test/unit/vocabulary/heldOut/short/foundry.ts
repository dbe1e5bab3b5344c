import type { Short } from './short';

/** Attributes beside elements that name their value, some left out; no root keys. */
export const foundry: Short = {
  text: `<foundry version="2">
  <mould src="casts/drop.aiff" min="24" max="24" vmin="1" vmax="31"><prop name="gain">0.25</prop><prop name="pan">-1</prop><prop name="attack">0.002</prop><prop name="release">1.5</prop></mould>
  <mould src="casts/drop.aiff" min="25" max="30" vmin="32" vmax="95"><prop name="gain">0.7</prop><prop name="pan">0.35</prop><prop name="attack">0.01</prop><prop name="release">0.4</prop></mould>
  <mould src="casts/ring.aiff" min="31" max="36" vmin="96" vmax="127"><prop name="gain">1.0</prop><prop name="release">0.75</prop></mould>
</foundry>
`,
  regions: [
    {
      sample: 'casts/drop.aiff',
      lokey: 24,
      hikey: 24,
      lovel: 1,
      hivel: 31,
      volume: -12.0412,
      pan: -100,
      ampeg_attack: 0.002,
      ampeg_release: 1.5,
    },
    {
      sample: 'casts/drop.aiff',
      lokey: 25,
      hikey: 30,
      lovel: 32,
      hivel: 95,
      volume: -3.098039,
      pan: 35,
      ampeg_attack: 0.01,
      ampeg_release: 0.4,
    },
    {
      sample: 'casts/ring.aiff',
      lokey: 31,
      hikey: 36,
      lovel: 96,
      hivel: 127,
      volume: 0,
      ampeg_release: 0.75,
    },
  ],
  open: [],
};
