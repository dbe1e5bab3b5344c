import { arrangeText } from '../../features/arrange/arrangeText';
import { mapMeasures } from '../../features/mapViews/mapMeasures';
import { regionFindings } from '../../map/regionFindings';
import { mapSceneInSteps } from '../../map/scene';
import { takeSteps } from '../../workspace/takeSteps';
import type { AnswerRequest } from '../answerLater';
import { stopIfCancelled } from '../cancellation';
import { workspaceEditOf } from '../conversion/workspaceEdits';
import { noPreset, presetAtUri } from '../requestedPreset';
import type { ArrangeMapParams, ArrangeMapResult } from '../requests/requests';
import {
  ArrangeMapRequest,
  KeyboardMapRequest,
  MapFindingsRequest,
  MapMeasuresRequest,
} from '../requests/requests';
import type { ServerContext } from '../serverContext';
import { onceMeasured } from './handleSamples';

/** Answers the requests about keyboard maps: what they show, and the text for what is changed in them. */
export function handleInstrumentRequests(answer: AnswerRequest, server: ServerContext): void {
  const { documents } = server;

  answer(KeyboardMapRequest.type, async ({ uri, preset }, token) => {
    server.showsMaps = true;
    const reading = preset ? await presetAtUri(server, uri, preset) : await documents.reading(uri);
    stopIfCancelled(token);
    const version = server.openDocument(uri)?.version ?? 0;
    if (!reading)
      return { scene: null, version, reason: preset ? noPreset : 'This document holds no instrument.' };
    const scene = await takeSteps(mapSceneInSteps(reading.instrument), () => stopIfCancelled(token));
    return { scene, version };
  });

  answer(MapMeasuresRequest.type, async ({ uri, key }, token) => {
    const reading = await documents.reading(uri);
    stopIfCancelled(token);
    if (!reading) return null;
    const { instrument, notation } = reading;
    return onceMeasured(documents.samples, reading.folder ?? '', token, (samples) =>
      mapMeasures({ instrument, notation, samples }, key),
    );
  });

  answer(MapFindingsRequest.type, async ({ uri }, token) => {
    const judgement = await documents.judgement(uri);
    const reading = await documents.reading(uri);
    stopIfCancelled(token);
    if (!judgement || !reading) return null;
    const { findings, source } = judgement;
    // Of a file that others include the map is its own, though it is checked as a part of them.
    const sourceOf = source === 0 ? undefined : (one: number) => (one === source ? 0 : undefined);
    const version = server.openDocument(uri)?.version ?? 0;
    return { version, findings: regionFindings(reading.instrument, findings, sourceOf) };
  });

  answer(ArrangeMapRequest.type, (params) => arrange(server, params));
}

async function arrange(
  server: ServerContext,
  { uri, version, arrangement }: ArrangeMapParams,
): Promise<ArrangeMapResult> {
  const reading = await server.documents.reading(uri);
  if (!reading) return { refusal: 'This document holds no instrument.' };
  if (server.openDocument(uri)?.version !== version)
    return { refusal: 'The text changed in the meantime, so nothing was written. Try again.' };
  const made = arrangeText(reading, arrangement);
  if ('refusal' in made) return made;
  const files = reading.instrument.sources.flatMap((source, at) => {
    const edits = made.edits.filter((edit) => edit.source === at);
    return edits.length > 0 ? [{ source, edits }] : [];
  });
  return { edit: workspaceEditOf(server, files, { unsaved: uri }) };
}
