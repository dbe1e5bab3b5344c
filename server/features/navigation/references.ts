import type { Instrument } from '../../model/instrument';
import { directiveName } from '../../model/instrumentParts';
import { Parameter } from '../../model/parameterNames';
import { joinPath } from '../../model/paths';
import type { Span } from '../../model/text/span';
import { spanIn } from '../../model/text/span';
import { variablePlaces } from '../../model/variables/variableUses';
import { nameNumber } from '../readDocument';
import type { Subject } from './subject';
import { controllerOf, groupValue, pedalController, samplePathOf } from './subject';

/** A place of an instrument that is about a subject. */
export interface SubjectReference extends Span {
  /** Whether the subject gets its value, name or members here, instead of being used. */
  isDeclaration: boolean;
}

/** All places of an instrument, in all its files, that are about a subject; each place once, file by file in order. */
export function referencesOf(instrument: Instrument, subject: Subject): SubjectReference[] {
  const found: SubjectReference[] = [];
  const add = ({ source, start, end }: Span, isDeclaration: boolean) =>
    found.push({ ...spanIn(source, start, end), isDeclaration });
  switch (subject.kind) {
    case 'variable':
      for (const place of variablePlaces(instrument))
        if (place.name === subject.name) add(place, place.kind === 'define');
      break;
    case 'sample':
      sampleReferences(instrument, subject.path, add);
      break;
    case 'controller':
      controllerReferences(instrument, subject.number, add);
      break;
    case 'group':
      groupReferences(instrument, subject.value, add);
      break;
    case 'label':
      eachParameter(instrument, subject.name, (parameter) => {
        if (instrument.valueText(parameter) === subject.text) add(instrument.valueSpan(parameter), true);
      });
      break;
    case 'include':
      for (const directive of instrument.directives)
        if (directive.kind === 'include' && directive.value === subject.path)
          add(directiveName(directive), false);
  }
  return eachOnce(found);
}

type Add = (span: Span, isDeclaration: boolean) => void;

function eachParameter(instrument: Instrument, canonical: number, use: (parameter: number) => void): void {
  const { count } = instrument.parameters;
  for (let parameter = 0; parameter < count; parameter++)
    if (instrument.canonicalName(parameter) === canonical) use(parameter);
}

/** The places that name the sample, and the tags of the regions that play it without naming it themselves. */
function sampleReferences(instrument: Instrument, path: string, add: Add): void {
  const named = new Map<number, boolean>();
  const isNamed = (parameter: number) => {
    let is = named.get(parameter);
    if (is === undefined) {
      is = samplePathOf(instrument, parameter) === path;
      named.set(parameter, is);
    }
    return is;
  };
  eachParameter(instrument, Parameter.sample, (parameter) => {
    if (isNamed(parameter)) add(instrument.valueSpan(parameter), false);
  });
  for (const region of instrument.regions) {
    const parameter = instrument.sampleParameter[region];
    if (parameter < 0) continue;
    const isOwn = parameter >= instrument.firstParameter(region);
    // Where a <control> stands between the two, the region's own default path counts.
    if (!isOwn && joinPath('', instrument.samplePath(region) ?? '') === path)
      add(instrument.headerSpan(region), false);
  }
}

function controllerReferences(instrument: Instrument, number: number, add: Add): void {
  const { names, parameters } = instrument;
  const declares = /^(label|set|set_hd)_?cc\d/;
  // Most opcodes react to no controller, so each name is looked at once.
  const known = new Map<number, boolean>();
  for (let parameter = 0; parameter < parameters.count; parameter++) {
    const name = instrument.name(parameter);
    let is = known.get(name);
    if (is === undefined) {
      is = controllerOf(names, name) === number;
      known.set(name, is);
    }
    if (is)
      add(instrument.nameSpan(parameter), declares.test(names.text(instrument.canonicalName(parameter))));
  }
  for (const pedal of ['sustain_cc', 'sostenuto_cc']) {
    eachParameter(instrument, nameNumber(instrument, pedal), (parameter) => {
      if (pedalController(instrument, parameter) === number) add(instrument.valueSpan(parameter), false);
    });
  }
}

function groupReferences(instrument: Instrument, value: string, add: Add): void {
  const group = nameNumber(instrument, 'group');
  const offBy = nameNumber(instrument, 'off_by');
  for (let parameter = 0; parameter < instrument.parameters.count; parameter++) {
    const canonical = instrument.canonicalName(parameter);
    if ((canonical === group || canonical === offBy) && groupValue(instrument, parameter) === value)
      add(instrument.valueSpan(parameter), canonical === group);
  }
}

function eachOnce(found: SubjectReference[]): SubjectReference[] {
  const order = (a: SubjectReference, b: SubjectReference) =>
    a.source - b.source || a.start - b.start || a.end - b.end;
  const isInOrder = found.every((one, at) => at === 0 || order(found[at - 1], one) <= 0);
  if (!isInOrder) found.sort(order);
  return found.filter((one, at) => {
    const before = found[at - 1];
    return !before || before.source !== one.source || before.start !== one.start || before.end !== one.end;
  });
}
