// Keeps the page as the server says, says so when it can't, and sends what is pressed.

import {rows} from './axis.js';
import {chosen, details, doing, keeping, notes, orders, patch, practice, sentence, together, whatIf} from './parts.js';
import {stalled, watch} from './watch.js';
import {asOf, put} from './page.js';

/** After this long without a word from the server nothing shown is sure to be so now, in ms. */
const STALE_MS = 2500;

const may = document.body.dataset.may;
let state = null;
let answer = null;
let ahead = 0;
let last = performance.now();
let refused = '';

// The token has become a cookie: it needn't stay in the address. What is chosen does.
const place = new URLSearchParams(location.hash.slice(1));
history.replaceState(null, '', location.pathname + location.hash);

function remember(name, value) {
  value ? place.set(name, value) : place.delete(name);
  history.replaceState(null, '', `${location.pathname}#${place}`);
}

const asked = () => ({block: place.get('block') ?? '', rate: place.get('rate') ?? '', without: place.get('without') ?? ''});

async function send(order, body = {}) {
  try {
    const reply = await fetch(`do/${order}`, {method: 'POST', headers: {'Content-Type': 'application/json'}, body: JSON.stringify(body)});
    refused = reply.ok ? '' : await reply.text();
  } catch {
    refused = 'The computer could not be reached.';
  }
  link();
}

async function ask(name, value) {
  if (name) {
    remember(name, value);
  } else {
    ['block', 'rate', 'without'].forEach(each => remember(each, ''));
  }
  const query = new URLSearchParams(Object.entries(asked()).filter(([, given]) => given));
  answer = null;
  if ([...query].length) {
    const reply = await fetch(`what-if?${query}`);
    answer = reply.ok ? await reply.json() : {failed: await reply.text()};
  }
  show();
}

function choose(name) {
  remember('path', name);
  show();
}

const now = () => Date.now() + ahead;

function show() {
  if (!state) {
    return;
  }
  document.title = `${state.rig} · Loopgauge`;
  const path = state.paths.find(one => one.name === place.get('path')) ?? state.paths[0];
  const time = Math.floor(now() / 10000);
  const forecast = answer && !answer.failed ? answer : null;
  put('rig', state.rig, () => state.rig);
  put('settings', [state.settings, state.practice], () => state.settings + (state.practice ? ' · simulated rig, no sound' : ''));
  put('sentence', state.sentence, () => sentence(state));
  put('asof', [state.sentence, time], () => asOf(state.sentence, now()));
  put('doing', [state.doing, state.sound], () => doing(state, may, send));
  put('chosen', [path, time], () => chosen(path, now()));
  put('orders', [state.doing.step, path.name, path.reading?.further, path.reading?.openArrival], () => orders(state, path, may, send));
  put('watch', [state.watch, stalled(state.watch, now())], () => watch(state.watch, stalled(state.watch, now())));
  put('practice', state.practice && may === 'agree' ? [state.options, state.doing.step === 'idle'] : null, () => state.practice && may === 'agree' ? practice(state, send) : null);
  put('paths', [state.paths, path.name, forecast, time], () => rows(state.paths, path.name, forecast, choose, now()));
  put('details', path, () => details(path));
  put('keeping', [state.keeping, state.doing.step], () => keeping(state, may, send));
  put('whatif', [state.options, asked(), answer], () => whatIf(state, asked(), answer, ask));
  put('together', state.mixes, () => together(state));
  put('notes', state.notes, () => notes(state));
  put('patch', [state.patch, time], () => patch(state, now()));
}

function link() {
  const stale = performance.now() - last > STALE_MS;
  const silent = state?.sound;
  document.body.classList.toggle('stale', stale || Boolean(silent));
  const words = stale
    ? 'No word from the computer: these numbers are not from now.'
    : refused || (silent ? 'The sound is gone: these numbers are not from now.' : 'Live');
  const part = document.getElementById('link');
  if (part.textContent !== words) {
    part.textContent = words;
    part.className = stale || refused || silent ? 'wrong' : '';
  }
}

function heard(event) {
  const news = JSON.parse(event.data);
  last = performance.now();
  ahead = news.now - Date.now();
  if (news.state) {
    state = news.state;
  }
  show();
  link();
}

const events = new EventSource('events');
events.addEventListener('state', heard);
events.addEventListener('beat', heard);
setInterval(link, 250);

document.getElementById('stop').addEventListener('click', () => send('stop'));
document.addEventListener('keydown', event => {
  if (event.key === 'Escape') {
    send('stop');
  }
});
if (Object.values(asked()).some(Boolean)) {
  ask('block', place.get('block') ?? '');
}
