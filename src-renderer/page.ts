import { mount } from 'svelte';
import './look/type.ts';
import './look/tokens.css';
import './look/base.css';
import './look/frame.css';
import { connectHost } from './host/client.ts';
import App from './shell/App.svelte';

const target = document.getElementById('app');
if (!target) throw new Error('The page has no place for the board.');
mount(App, { target, props: { call: await connectHost() } });
