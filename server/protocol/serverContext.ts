import type { ClientCapabilities, Connection } from 'vscode-languageserver';
import type { InstrumentDocuments } from '../workspace/documents';
import type { OpenDocument } from '../workspace/openDocument';
import type { SampleOutlines } from '../workspace/samples/sampleOutlines';
import type { DiagnosticOptions } from './conversion/diagnostics';
import type { Settings } from './settings';

/** What those who answer requests know of the connection and of what is open in it. */
export interface ServerContext {
  readonly connection: Connection;
  readonly documents: InstrumentDocuments;
  readonly settings: Settings;
  readonly outlines: SampleOutlines;
  /** What the client can do. */
  readonly capabilities: ClientCapabilities;
  /** The client's command that offers completions: `suggestCommand` of the options that it starts the server with. */
  readonly suggestCommand: string | undefined;
  /** The client's command that shows a stretch of a document on the keyboard map: `mapCommand` of those options. */
  readonly mapCommand: string | undefined;
  /** The client's command that plays the regions of a stretch of a document: `playCommand` of those options. */
  readonly playCommand: string | undefined;
  /** The client's command that plays the sample of the region at a stretch of a document: `playSampleCommand` of those options. */
  readonly playSampleCommand: string | undefined;
  /** The client's command that writes a vocabulary file: `saveVocabularyCommand` of those options. */
  readonly saveVocabularyCommand: string | undefined;
  /** The client's command that has a person choose a folder in the place of another: `locateFolderCommand` of those options. */
  readonly locateFolderCommand: string | undefined;
  /**
   * The client's command that shows what fixes would change in a folder before it has them made: `fixFolderCommand` of those
   * options. It takes what the server's own takes.
   */
  readonly fixFolderCommand: string | undefined;
  /** The client's command that opens a file: `openCommand` of those options. */
  readonly openCommand: string | undefined;
  /** Whether somebody shows keyboard maps and is told of changes. */
  showsMaps: boolean;
  /** The open document of a URI. */
  openDocument(uri: string): OpenDocument | undefined;
  readonly openDocuments: OpenDocument[];
  /** The open folders, absolute with `/`. */
  readonly folders: readonly string[];
  /** How diagnostics of a document are made for this client. */
  diagnosticOptions(uri: string): DiagnosticOptions;
}
