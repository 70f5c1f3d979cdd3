import { render } from 'preact';
import { followMenus } from '../shell/menus.ts';
import { followTheme } from '../shell/theme.ts';
import '../styles/watchIndex.css';
import { WatchApp } from './WatchApp.tsx';

const root = document.getElementById('app');
if (root === null) throw new Error('The page has no place for the app');
followTheme();
followMenus();
render(<WatchApp />, root);
