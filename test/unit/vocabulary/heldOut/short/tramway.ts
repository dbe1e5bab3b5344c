import type { Short } from './short';

/** French: velocities in percent, a ratio for the tuning, words for the sides; names of notes without an octave say nothing. */
export const tramway: Short = {
  text: `<tramway>
  <ligne nom="doux" velociteMin="0 %" velociteMax="50 %">
    <arret fichier="doux/do.wav" note="do" noteMin="48" noteMax="53" noteBase="50" rapport="1.0006" balance="30 gauche" inverse="non"/>
    <arret fichier="doux/fa.wav" note="fa" noteMin="54" noteMax="59" noteBase="55" rapport="0.9981" balance="centre" inverse="non"/>
  </ligne>
  <ligne nom="fort" velociteMin="50 %" velociteMax="100 %">
    <arret fichier="fort/do.wav" note="do" noteMin="48" noteMax="59" noteBase="52" rapport="1" balance="100 droite" inverse="oui"/>
  </ligne>
</tramway>
`,
  regions: [
    {
      group_label: 'doux',
      lovel: 0,
      hivel: 63,
      sample: 'doux/do.wav',
      lokey: 48,
      hikey: 53,
      pitch_keycenter: 50,
      tune: 1.038429,
      pan: -30,
      direction: 'forward',
    },
    {
      group_label: 'doux',
      lovel: 0,
      hivel: 63,
      sample: 'doux/fa.wav',
      lokey: 54,
      hikey: 59,
      pitch_keycenter: 55,
      tune: -3.292474,
      pan: 0,
      direction: 'forward',
    },
    {
      group_label: 'fort',
      lovel: 64,
      hivel: 127,
      sample: 'fort/do.wav',
      lokey: 48,
      hikey: 59,
      pitch_keycenter: 52,
      tune: 0,
      pan: 100,
      direction: 'reverse',
    },
  ],
  open: ['tune', 'arret/@note'],
};
