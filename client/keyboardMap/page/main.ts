import './page.css';
import { startPage } from '../../webview/page/pageElement';
import { MapPage } from './mapPage';

startPage('keyboard-map', MapPage);
