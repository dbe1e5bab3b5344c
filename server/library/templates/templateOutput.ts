import type { Notation } from '../../model/notation';
import type { Output, OutputAccount, OutputContent } from '../../model/output';
import { endingOf, folderOf, joinPath, nameOf } from '../../model/paths';
import { readInstrument } from '../../workspace/analyse';
import { wholeAccount } from '../../workspace/convertInstrument';
import type { IncludeStore } from '../../workspace/files/includeStore';
import type { VocabularySource } from '../../workspace/notations/notationOutput';
import type { SampleStore } from '../../workspace/samples/sampleStore';
import { intoTemplate } from './intoTemplate';
import type { Facts } from './markings';
import type { Template } from './template';

/** The text of a template and how it is read. */
export interface TemplateText {
  /** Absolute with `/`. */
  path: string;
  text: string;
  notation: Notation;
}

/** What a template needs from around it. */
export interface TemplateSurroundings {
  includes: IncludeStore;
  samples: SampleStore;
  /** What is known of an instrument, by its name; its title is its name where nothing else is said. */
  factsOf?: (name: string) => Facts;
  /** Told which facts the template has a place for that are not known. */
  onMissing?: (facts: readonly string[]) => void;
}

/** Putting instruments into a template, a file an instrument. */
export function templateOutput(template: TemplateText, around: TemplateSurroundings): Output {
  const ending = endingOf(template.path);
  return {
    ending,
    async write(sources: readonly VocabularySource[], { fileName, folder: targetFolder, progress, signal }) {
      const files = new Map<string, OutputContent>();
      const accounts: OutputAccount[] = [];
      for (const source of sources) {
        signal?.throwIfAborted();
        const name = sources.length === 1 && fileName !== undefined ? fileName : source.name + ending;
        const facts = new Map(around.factsOf?.(source.name));
        // A table that was copied has no name.
        if (source.name !== '' && !facts.has('title')) facts.set('title', source.name);
        const { text, missing, ...account } = await intoTemplate(
          templateIn(template, around, joinPath(targetFolder ?? folderOf(template.path), name)),
          { instrument: source.instrument, folder: source.folder, targetFolder, facts },
        );
        around.onMissing?.(missing);
        files.set(name, text);
        accounts.push(wholeAccount(source, account));
        progress?.(accounts.length, sources.length);
      }
      return { files, accounts };
    },
  };
}

/** A template whose text is read as if it stood at a path: what it includes is found from its own folder. */
function templateIn(
  { text, notation, path: ownPath }: TemplateText,
  { includes, samples }: TemplateSurroundings,
  path: string,
): Template {
  return {
    text,
    notation,
    read: (changed) => {
      // A vocabulary can count in seconds and so asks for samples, which are beside the result.
      if (notation.parameters) return readInstrument({ path, text: changed, notation, samples }, includes);
      return readInstrument(
        { path: joinPath(folderOf(ownPath), nameOf(path)), text: changed, notation },
        includes,
      );
    },
  };
}
