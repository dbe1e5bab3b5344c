import './page.css';
import { startPage } from '../../webview/page/pageElement';
import { RecordingsPage } from './recordingsPage';

startPage('zonewright-recordings', RecordingsPage);
