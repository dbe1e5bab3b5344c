import { buildMapScene } from '../../map/scene';
import { stopIfCancelled } from '../cancellation';
import { noPreset, presetAtUri } from '../requestedPreset';
import { KeyboardMapRequest } from '../requests/requests';
import type { ServerContext } from '../serverContext';

/** Answers the request for keyboard maps. */
export function handleInstrumentRequests(server: ServerContext): void {
  const { connection, documents } = server;

  connection.onRequest(KeyboardMapRequest.type, async ({ uri, preset }, token) => {
    server.showsMaps = true;
    const reading = preset ? await presetAtUri(server, uri, preset) : await documents.reading(uri);
    stopIfCancelled(token);
    if (!reading) return { scene: null, reason: preset ? noPreset : 'This document holds no instrument.' };
    return { scene: buildMapScene(reading.instrument) };
  });
}
