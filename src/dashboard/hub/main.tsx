import { render } from 'preact';
import { followMenus } from '../shell/menus.ts';
import { followTheme } from '../shell/theme.ts';
import '../styles/hubIndex.css';
import { HubApp } from './HubApp.tsx';

const root = document.getElementById('app');
if (root === null) throw new Error('The page has no place for the app');
followTheme();
followMenus();
render(<HubApp />, root);
