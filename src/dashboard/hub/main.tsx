import { render } from 'preact';
import { followTheme } from '../shell/theme.ts';
import '../styles/hubIndex.css';
import { HubApp } from './HubApp.tsx';

const root = document.getElementById('app');
if (root === null) throw new Error('The page has no place for the app');
followTheme();
render(<HubApp />, root);
