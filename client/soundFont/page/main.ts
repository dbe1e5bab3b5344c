import './page.css';
import { startPage } from '../../webview/page/pageElement';
import { FontPage } from './fontPage';

startPage('sound-font', FontPage);
