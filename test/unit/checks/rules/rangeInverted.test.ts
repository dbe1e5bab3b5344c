import { describe, expect, it } from 'vitest';
import { rangeInverted } from '../../../../server/checks/rules/rangeInverted';
import { foundBy, markedBy } from '../foundBy';

const marks = (text: string) => markedBy(rangeInverted, text);

/** sfzformat.com: a region sounds within a range, from its low end to its high end; the last of one opcode counts. */
describe('a range whose low end is above its high end', () => {
  it.each([
    ['<region> lokey=64 hikey=60', '60'],
    ['<region> hikey=60 lokey=64', '64'],
    ['<region> lokey=c5 hikey=60', '60'],
    ['<region> lokey=5 hikey=0', '0'],
    ['<region> lovel=100 hivel=90', '90'],
    ['<group> lokey=60 hikey=50 <control> <region>', '50'],
    ['<region> locc1=20 hicc1=10', '10'],
    ['<region> lorand=0.5 hirand=0.2', '0.2'],
    ['<region> lobend=-50 hibend=-100', '-100'],
    ['<region> sw_lokey=c2 sw_hikey=c1', 'c1'],
    ['<region> key=60 hikey=59', '59'],
    ['<group> lokey=60 <region> hikey=50', '50'],
    ['<group> hikey=50 <region> lokey=60', '60'],
    ['<group> lokey=60 hikey=50 <region>', '50'],
    ['<global> lokey=60 <group> hikey=50 <region>', '50'],
    ['<region> lokey=1 lokey=60 hikey=50', '50'],
  ])('%s', (text, mark) => {
    expect(marks(text)).toEqual([mark]);
  });

  it.each([
    ['<region> lokey=64 hikey=60', 'lokey=64 is above hikey=60, so this never sounds. Swap the two values.'],
    [
      '<region> xfin_lovel=90 xfin_hivel=50',
      'xfin_lovel=90 is above xfin_hivel=50: the fade-in ends before it starts.',
    ],
    ['<region> xfout_lokey=90 xfout_hikey=50', ': the fade-out ends before it starts.'],
    ['<region> on_locc4=90 on_hicc4=50', ', so the controller never starts this.'],
  ])('is told with what comes of it: %s', (text, message) => {
    expect(foundBy(rangeInverted, text).messages[0]).toContain(message);
  });

  it.each([
    ['in order', '<region> lokey=60 hikey=64'],
    ['equal', '<region> lokey=60 hikey=60'],
    ['one key', '<region> key=60'],
    ['one end alone', '<region> lokey=64'],
    ['switched off', '<region> lokey=60 hikey=-1'],
    ['controllers switched off', '<region> on_locc64=64 on_hicc64=-1'],
    ['two controllers', '<region> locc1=20 hicc2=10'],
    ['no number', '<region> lokey=x hikey=50'],
    ['none in a region', '<group> lokey=60 hikey=50'],
    ['another end in each region', '<group> lokey=60 hikey=50 <region> hikey=70'],
    ['another low end in each region', '<group> lokey=60 hikey=50 <region> lokey=40'],
    ['a group without a region', '<group> lokey=60 hikey=50 <group> <region>'],
    ['a master without a region', '<master> lokey=60 hikey=50 <global> <region>'],
    ['a group without a region inside', '<master> lokey=60 hikey=50 <group>'],
    ['bend below 0', '<region> lobend=-100 hibend=-50'],
  ])('is none: %s', (_, text) => {
    expect(marks(text)).toEqual([]);
  });

  it('is told once, for however many regions', () => {
    expect(marks('<group> lokey=60 hikey=50 <region> <region> <region>')).toEqual(['50']);
    expect(marks('<group> lokey=60 <region> hikey=50 <region> hikey=40')).toEqual(['50', '40']);
    // A group further out that no region ends keeps its regions.
    expect(marks('<master> lokey=60 hikey=50 <group> <region>')).toEqual(['50']);
  });

  it('says what is above what, and where the other end is', () => {
    const { messages, related } = foundBy(rangeInverted, '<group> lokey=60 <region> hikey=50');
    expect(messages[0]).toMatch(/^lokey=60 is above hikey=50.*Swap/);
    expect(related).toEqual([['60: The other end of the range is lokey=60.']]);
    expect(foundBy(rangeInverted, '<region> hikey=60 lokey=c5').related).toEqual([
      ['60: The other end of the range is hikey=60.'],
    ]);
  });

  it('is swapped where both ends are written by themselves', () => {
    const { fixed, titles } = foundBy(rangeInverted, '<group> lokey=60 <region> hikey=50');
    expect(fixed).toEqual([['<group> lokey=50 <region> hikey=60']]);
    expect(titles[0][0]).toMatch(/Swap/);
    expect(foundBy(rangeInverted, '<region> key=60 hikey=59').fixed).toEqual([[]]);
    expect(foundBy(rangeInverted, '<region> key=60 lokey=61').fixed).toEqual([[]]);
  });
});

describe('the rule', () => {
  it('is told by the code and severity that the README lists', () => {
    expect(rangeInverted).toMatchObject({
      code: 'range-inverted',
      severity: 'error',
      finds: expect.stringContaining('low end is above its high end'),
    });
  });

  it('leaves what is heard to a person', () => {
    expect(foundBy(rangeInverted, '<region> lokey=64 hikey=60').safe).toEqual([false]);
  });
});
