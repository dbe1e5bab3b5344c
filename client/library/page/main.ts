import './page.css';
import { startPage } from '../../webview/page/pageElement';
import { LibraryPage } from './libraryPage';

startPage('zonewright-library', LibraryPage);
