import { mount } from 'svelte';
import './look/type.ts';
import './look/tokens.css';
import './look/base.css';
import './look/frame.css';
import type { CallHost } from '../src-main/api/contract.ts';
import { connectHost } from './host/client.ts';
import App from './shell/App.svelte';

const target = document.getElementById('app');
if (!target) throw new Error('The page has no place for the board.');
// The page is built while the host is still being met; what it asks waits for that.
const host = connectHost();
const call: CallHost = async (name, input) => (await host)(name, input);
mount(App, { target, props: { call } });
