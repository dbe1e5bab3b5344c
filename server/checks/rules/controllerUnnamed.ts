import { parameterUsesOf } from '../facts/parameters/parameterUses';
import type { Rule } from '../rule';

/**
 * Controllers whose meaning MIDI 1.0 (table of control change messages) fixes, so that they need no name: bank,
 * modulation, breath, foot, portamento time, data entry, volume, balance, pan, expression, effect controls, pedals,
 * sound controllers, portamento, effect depths, parameter numbers. From 120 on stand channel modes and, as SFZ uses
 * them, values of the note itself.
 */
function hasStandardMeaning(controller: number): boolean {
  return (
    [0, 1, 2, 4, 5, 6, 7, 8, 10, 11, 12, 13, 84].includes(controller) ||
    (controller >= 64 && controller <= 79) ||
    (controller >= 91 && controller <= 101) ||
    controller >= 120
  );
}

/** Finds controllers that an instrument reacts to without a label or value, where it labels others. */
export const controllerUnnamed: Rule = {
  code: 'controller-unnamed',
  severity: 'hint',
  finds:
    'A controller that the instrument uses but neither labels nor sets, although it labels others. Controllers that MIDI gives a meaning are left aside.',
  check(context, report) {
    const { instrument } = context;
    const { names, first } = parameterUsesOf(context);
    const named = new Set<number>();
    const used = new Map<number, number>();
    let labels = false;
    for (const name of names) {
      const [, before = '', digits] = /^(.*)cc(\d+)$/.exec(instrument.names.text(name)) ?? [];
      if (digits === undefined || !instrument.names.opcode(name)) continue;
      const controller = Number(digits);
      if (before === 'label_') labels = true;
      if (/^(?:label_|set_(?:hd|real)?)$/.test(before)) named.add(controller);
      else if (!used.has(controller)) used.set(controller, first[name]);
    }
    if (!labels) return;
    for (const [controller, parameter] of used) {
      if (named.has(controller) || hasStandardMeaning(controller)) continue;
      report({
        ...instrument.nameSpan(parameter),
        message: `Controller ${controller} is used here but has neither a label nor a starting value. Add label_cc${controller} or set_cc${controller} under the header control.`,
      });
    }
  },
};
