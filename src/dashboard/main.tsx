import { render } from 'preact';
import { App } from './App.tsx';
import { openFeed } from './feed/feed.ts';
import { followDoubleTap } from './practice/followDoubleTap.ts';
import { listenToKeys } from './shell/keys.ts';
import { followMenus } from './shell/menus.ts';
import { followTheme } from './shell/theme.ts';
import { pageSound } from './sound/pageSound.ts';
import './styles/index.css';

const root = document.getElementById('app');
if (root === null) throw new Error('The page has no place for the app');
followTheme();
followMenus();
const feed = openFeed();
listenToKeys(feed);
followDoubleTap(feed);
render(<App feed={feed} sound={pageSound(feed)} />, root);
