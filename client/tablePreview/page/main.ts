import './page.css';
import { startPage } from '../../webview/page/pageElement';
import { PreviewPage } from './previewPage';

startPage('table-preview', PreviewPage);
