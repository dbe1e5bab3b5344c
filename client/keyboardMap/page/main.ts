import type { HostMessage } from '../messages';
import { host } from './host';
import { MapView } from './mapView';

const root = document.getElementById('keyboard-map');
if (root) {
  const view = new MapView(
    root,
    {
      choose: ({ header, source, start, end }) =>
        host.postMessage({ type: 'choose', header, source, start, end }),
      settingsChanged: (settings) => host.setState(settings),
    },
    host.getState() ?? { zoom: 1, hiddenLayers: [] },
  );
  window.addEventListener('message', (event: MessageEvent<HostMessage>) => {
    const message = event.data;
    if (message.type === 'scene') view.show(message.scene, message.document);
    else if (message.type === 'select') view.select(message.regions);
    else if (message.type === 'empty') view.showNothing(message.reason);
  });
  host.postMessage({ type: 'ready' });
}
