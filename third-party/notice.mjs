// The notice that goes with the bundles: the licence of every package in them, and of the libraries that packages have
// compiled in, which no bundler sees. `contains.json` names these, `licences` holds texts that packages do not carry:
// those of the codec libraries as Debian 12 gives them, of the others as the packages state.

import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const { licences, compiledIn } = JSON.parse(readFileSync(join(here, 'contains.json'), 'utf8'));
const line = `\n${'-'.repeat(78)}\n\n`;

/** The folders of the packages that bundled files belong to, sorted; files of this project belong to none. */
export function packageFolders(inputs) {
  const folder = /^(?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+/;
  return [...new Set(inputs.flatMap((input) => folder.exec(input)?.[0] ?? []))].sort();
}

/** The names of the libraries that packages have compiled in, sorted. */
export function compiledLibraries(names) {
  return [...new Set(names.flatMap((name) => compiledIn[name] ?? []))].sort();
}

/** The whole notice for bundled files, by their paths from the repository. Fails for a package without a licence text. */
export function thirdPartyNotice(repository, inputs) {
  const packages = packageFolders(inputs).map((folder) => packageAt(join(repository, folder)));
  const libraries = compiledLibraries(packages.map(({ name }) => name));
  const sections = [
    ...packages.map(({ name, version, licence, text }) => `${name} ${version} (${licence})\n\n${text}`),
    ...libraries.map((name) => {
      const users = packages.filter((one) => compiledIn[one.name]?.includes(name));
      return `${name}, compiled into ${users.map((one) => one.name).join(', ')}\n\n${textOf(name)}`;
    }),
  ];
  const heading = 'The bundles in this folder contain code of these packages and libraries.\n';
  return [heading, ...sections.map((section) => `${section.trimEnd()}\n`)].join(line);
}

/** A package with its licence, as its file `package.json` says and as its text. */
export function packageAt(folder) {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const files = readdirSync(folder).filter((entry) => /^(licen[cs]e|copying|notice)(\.|-|$)/i.test(entry));
  const texts = files.sort().map((file) => readFileSync(join(folder, file), 'utf8').replaceAll('\r\n', '\n'));
  if (texts.length === 0 && licences[name]) texts.push(textOf(licences[name]));
  if (texts.length === 0) texts.push(...readmeSection(folder));
  if (texts.length === 0)
    throw new Error(`${name} carries no licence text: put it into third-party/licences and contains.json`);
  return { name, version, licence: license, text: texts.join('\n\n') };
}

/** What stands under the heading of the licence in a package's README, where it is a whole licence. */
function readmeSection(folder) {
  const readme = readdirSync(folder).find((entry) => /^readme\.md$/i.test(entry));
  const text = readme === undefined ? '' : readFileSync(join(folder, readme), 'utf8');
  const section = /^#+\s*licen[cs]e\s*\n([\s\S]*?)(?=^#|$(?![\s\S]))/im.exec(text)?.[1]?.trim() ?? '';
  return /without warranty|as is/i.test(section) ? [section] : [];
}

function textOf(name) {
  return readFileSync(join(here, 'licences', `${name}.txt`), 'utf8');
}
