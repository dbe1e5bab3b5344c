import { keyOfNoteName } from '../../model/keys';
import { controllerCount } from '../../playing/player/playState';
import { CommandError } from '../commandError';

/** The key that an option names, a number from 0 to 127 or a note name with C4 = 60; `undefined` where it is not given. */
export function keyWord(name: string, text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const key = /^\d{1,3}$/.test(text) ? Number(text) : keyOfNoteName(text);
  if (key === undefined || key > 127)
    throw new CommandError(`--${name} takes a key from 0 to 127 or a note name such as C4, not "${text}"`);
  return key;
}

/** The whole number that an option gives; `undefined` where it is not given. */
export function wholeWord(
  name: string,
  text: string | undefined,
  [low, high]: readonly [low: number, high: number],
): number | undefined {
  if (text === undefined) return undefined;
  const number = /^\d{1,15}$/.test(text) ? Number(text) : Number.NaN;
  if (!(number >= low && number <= high))
    throw new CommandError(`--${name} takes a whole number from ${low} to ${high}, not "${text}"`);
  return number;
}

/** The controllers that `--controller N=V` sets, by number; of several for one the last counts. */
export function controllerWords(texts: readonly string[] | undefined): Map<number, number> {
  const controllers = new Map<number, number>();
  for (const text of texts ?? []) {
    const [, number, value] = /^(\d{1,3})=(\d{1,3}(?:\.\d+)?)$/.exec(text) ?? [];
    if (number === undefined || Number(number) >= controllerCount || Number(value) > 127)
      throw new CommandError(
        `--controller takes NUMBER=VALUE, a number from 0 to ${controllerCount - 1} and a value from 0 to 127, not "${text}"`,
      );
    controllers.set(Number(number), Number(value));
  }
  return controllers;
}

/** The seconds that an option gives, with fractions; `undefined` where it is not given. */
export function secondsWord(name: string, text: string | undefined, most: number): number | undefined {
  if (text === undefined) return undefined;
  const seconds = /^\d{1,4}(\.\d{1,9})?$/.test(text) ? Number(text) : Number.NaN;
  if (!(seconds <= most)) throw new CommandError(`--${name} takes seconds from 0 to ${most}, not "${text}"`);
  return seconds;
}
