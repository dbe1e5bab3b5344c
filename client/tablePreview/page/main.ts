import type { HostMessage } from '../messages';
import { host } from './host';
import { PreviewView } from './previewView';

const root = document.getElementById('table-preview');
if (root) {
  const view = new PreviewView(root, (message) => host.postMessage(message));
  window.addEventListener('message', ({ data }: MessageEvent<HostMessage>) => {
    if (data.type === 'preview') view.show(data);
    else if (data.type === 'empty') view.showNothing(data.reason);
  });
  host.postMessage({ type: 'ready' });
}
