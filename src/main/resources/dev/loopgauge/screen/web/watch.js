// A watch: how each path is doing now, and what happened.

import {clock, make, shape} from './page.js';

/** Paths are looked at each second: after five looks without a word nothing shown is sure to be so now. */
const STALLED_MS = 5000;

/** Whether a watch that goes on has told nothing for too long. */
export const stalled = (seen, nowMs) => Boolean(seen?.on && nowMs - (seen.lookedMs ?? seen.sinceMs) > STALLED_MS);

const row = path => make('li', {class: 'watched'},
  make('span', {class: 'who'}, shape(path.standing), make('span', {class: 'name'}, path.name)),
  make('span', {class: path.ms === null ? 'now quiet' : 'now number'}, path.ms === null ? 'no reading' : `${path.ms} ms`, path.samples === null ? null : make('span', {class: 'quiet'}, ` ${path.samples} samples`)),
  make('span', {class: 'how'}, path.word, path.event === null ? null : make('strong', {}, ` ${path.event}`)));

const happened = event => make('li', {},
  make('p', {}, make('time', {}, event.clock), make('strong', {}, ` ${event.path} `), event.text),
  event.causes.map(cause => make('p', {class: 'quiet'}, cause)));

/** The section; nothing where nothing ever was watched. */
export function watch(seen, isStalled) {
  if (!seen) {
    return null;
  }
  const since = clock(seen.sinceMs);
  return [
    make('h2', {}, seen.on ? `Watched now, since ${since}` : `Watched last, from ${since}`),
    make('p', {class: seen.on ? 'quiet' : 'line'}, seen.told),
    seen.note === null ? null : make('p', {class: 'trouble'}, shape('bad'), make('span', {}, seen.note)),
    isStalled ? make('p', {class: 'trouble'}, shape('bad'), make('span', {}, seen.lookedMs === null ? 'No sound was heard yet.' : `Nothing was read since ${clock(seen.lookedMs)}: these numbers are not from now.`)) : null,
    seen.paths.length ? make('ul', {class: isStalled ? 'watching stale' : 'watching'}, seen.paths.map(row)) : null,
    seen.lines.length ? make('ul', {class: 'plain'}, seen.lines.map(line => make('li', {}, line))) : null,
    seen.events.length ? [make('h3', {}, 'What happened, the last first'), make('ol', {class: 'events'}, seen.events.map(happened))] : null];
}
