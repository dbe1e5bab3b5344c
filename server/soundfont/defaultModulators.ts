import type { Modulator } from './font';
import { Generator } from './generators';

/** What makes two modulators the same but for their amount (SoundFont Technical Specification 2.04, section 9.5.1). */
export function identityOf({ source, destination, amountSource, transform }: Modulator): string {
  return `${source},${destination},${amountSource},${transform}`;
}

function modulator(source: number, destination: number, amount: number, amountSource = 0): Modulator {
  return { source, destination, amount, amountSource, transform: 0 };
}

/** The velocity moves the level: the loudest at the greatest velocity, 40·log10(127/velocity) dB below at others. */
export const velocityToLevel = modulator(0x0502, Generator.attenuation, 960);
/** The pressure of the channel and the modulation wheel move the depth of the vibrato. */
export const pressureToVibrato = modulator(0x000d, Generator.vibratoLfoToPitch, 50);
export const wheelToVibrato = modulator(0x0081, Generator.vibratoLfoToPitch, 50);

/**
 * The velocity closes the filter. The versions of the specification say in different ways when (amount source 0 in 2.04, a
 * switch printed in two ways in 2.01), and players do it in different ways or not at all.
 */
export const velocityToCutoff: readonly Modulator[] = [0, 0x0d02, 0x0502].map((amountSource) =>
  modulator(0x0102, Generator.filterCutoff, -2400, amountSource),
);

/** Modulators that stand for what every player does with a channel: volume, expression, pan, sends and bend. */
const ofChannel: readonly Modulator[] = [
  modulator(0x0587, Generator.attenuation, 960),
  modulator(0x058b, Generator.attenuation, 960),
  modulator(0x028a, Generator.pan, 1000),
  modulator(0x00db, Generator.reverbSend, 200),
  modulator(0x00dd, Generator.chorusSend, 200),
  modulator(0x020e, Generator.fineTune, 12700, 0x0010),
];

/**
 * The modulators of every instrument that says nothing else (section 8.4), those from velocity to filter aside, which are
 * left to what an instrument says itself.
 */
export const defaultModulators: readonly Modulator[] = [
  velocityToLevel,
  pressureToVibrato,
  wheelToVibrato,
  ...ofChannel,
];

const channelIdentities = new Set(ofChannel.map(identityOf));

/** Whether a modulator is what players do with a channel without being told, with the usual amount. */
export function isUsualOfChannel(one: Modulator): boolean {
  return (
    channelIdentities.has(identityOf(one)) &&
    ofChannel.some((usual) => identityOf(usual) === identityOf(one) && usual.amount === one.amount)
  );
}
