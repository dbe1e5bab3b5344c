import { facts } from '../../examples/invented';
import type { Short } from './short';

/** Spanish, with the number of frames of the files: ends name the last frame. */
export const faro: Short = {
  text: `<faro>
  <haz archivo="luz1.ogg" notaMinima="60" notaMaxima="64" notaRaiz="62" fuerzaMinima="0" fuerzaMaxima="63" volumen="-1,5" inicio="0" fin="88199" bucle="sí" inicioBucle="1000" finBucle="80000"/>
  <haz archivo="luz2.ogg" notaMinima="65" notaMaxima="70" notaRaiz="67" fuerzaMinima="64" fuerzaMaxima="127" volumen="0" inicio="220" fin="88199" bucle="no" inicioBucle="0" finBucle="0"/>
</faro>
`,
  samples: { 'luz1.ogg': facts(88_200, 44100), 'luz2.ogg': facts(88_200, 44100) },
  regions: [
    {
      sample: 'luz1.ogg',
      lokey: 60,
      hikey: 64,
      pitch_keycenter: 62,
      lovel: 0,
      hivel: 63,
      volume: -1.5,
      offset: 0,
      end: 88199,
      loop_mode: 'loop_continuous',
      loop_start: 1000,
      loop_end: 80000,
    },
    {
      sample: 'luz2.ogg',
      lokey: 65,
      hikey: 70,
      pitch_keycenter: 67,
      lovel: 64,
      hivel: 127,
      volume: 0,
      offset: 220,
      end: 88199,
      loop_mode: 'no_loop',
    },
  ],
  open: ['loop_end.last'],
};
