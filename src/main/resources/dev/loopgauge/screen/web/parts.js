// The parts of the page but for the time axis, each made of the state alone.

import {age, clock, make, shape} from './page.js';

const button = (id, text, onclick, more = {}) => make('button', {type: 'button', id, onclick, ...more}, text);
const list = (items, name = 'plain') => items.length ? make('ul', {class: name}, items.map(item => make('li', {}, item))) : null;
const open = new Set();
const fold = (id, title, content) => make('details', {open: open.has(id), ontoggle: event => event.target.open ? open.add(id) : open.delete(id)}, make('summary', {id}, title), content);
const trouble = one => make('p', {class: 'trouble'}, shape('bad'), make('span', {}, make('strong', {}, one.text), make('br'), `Try: ${one.hint}`));

export const sentence = state => make('p', {class: `sentence ${state.sentence.standing}`}, shape(state.sentence.standing), make('span', {}, state.sentence.text));

export function doing(state, may, send) {
  const now = state.doing;
  const parts = [];
  if (state.sound) {
    parts.push(trouble(state.sound));
  }
  if (now.step === 'asking') {
    parts.push(make('div', {class: 'asking'},
      make('h2', {}, `${now.title}: may it play?`), now.asked.map(line => make('p', {}, line)),
      may === 'agree'
        ? make('p', {class: 'buttons'}, button('agree', 'Yes, play', () => send('agree'), {class: 'main'}), button('leave', 'No', () => send('leave')))
        : make('p', {}, make('strong', {}, 'Somebody at the computer has to agree.'))));
  } else if (now.step === 'working') {
    parts.push(make('p', {class: 'working'}, `${now.title} …`));
  } else if (now.step === 'watching') {
    parts.push(make('p', {class: 'working'}, `${now.title} … It plays nothing. Measuring waits until it is turned off.`));
  }
  if (now.step === 'working' || now.step === 'watching') {
    parts.push(list(now.told.slice(-3), 'told'), meters(now.levels));
  }
  if (now.failed) {
    parts.push(trouble(now.failed));
  }
  return parts;
}

function meters(levels) {
  return levels.length ? make('ul', {class: 'meters'}, levels.map(level => make('li', {},
    make('span', {}, level.name),
    make('meter', {min: 0, max: 100, value: level.percent, 'aria-label': `${level.name}, peak`}),
    make('span', {class: 'number'}, level.figure),
    level.clipped ? make('strong', {class: 'bad'}, shape('bad'), 'CLIPPED') : null,
    level.heard ? null : make('strong', {class: 'undecided'}, shape('undecided'), 'nothing heard')))) : null;
}

export function chosen(path, now) {
  const reading = path.reading;
  const delay = reading?.delay;
  return [
    make('h2', {}, path.name, make('span', {class: 'quiet'}, ` ${path.listener}`)),
    delay
      ? [make('p', {class: 'big'}, make('span', {class: 'number'}, delay.ms), ' ms ', make('span', {class: 'plusminus number'}, delay.plusMinusMs)),
         make('p', {class: 'second'}, make('span', {class: 'number'}, delay.samples), ' samples')]
      : reading ? make('p', {class: 'big none'}, 'no number')
        : [make('p', {class: 'big predicted'}, make('span', {class: 'number'}, path.forecast.ms)), make('p', {class: 'second'}, 'predicted, not measured yet')],
    reading ? make('p', {class: `word ${path.standing}`}, shape(path.standing), make('span', {}, path.word)) : null,
    reading ? make('p', {class: 'from'}, `Measured ${age(reading.atMs, now)}, at `, make('time', {id: 'measured-at', datetime: new Date(reading.atMs).toISOString()}, clock(reading.atMs)), delay ? `; ${delay.how}` : '', reading.kept ? `; kept as ${reading.kept}` : '') : null,
    reading?.outdated ? make('p', {class: 'undecided'}, shape('undecided'), `Not from now: ${reading.outdated}.`) : null,
    reading?.causes.length ? make('p', {class: 'check'}, make('strong', {}, 'Check first: '), reading.causes[0]) : null,
    reading?.limit ? make('p', {}, `As measured, ${reading.limit} (${reading.predicted}).`) : null,
    make('p', {class: 'quiet'}, `Predicted: ${path.forecast.ms}, ${path.forecast.samples} in all; ${path.forecast.told}.`)];
}

export function orders(state, path, may, send) {
  const busy = state.doing.step !== 'idle';
  if (may === 'look') {
    return make('p', {class: 'quiet'}, 'You can look, and stop what plays. Who sits at the computer measures.');
  }
  const watching = state.doing.step === 'watching';
  const size = path.reading?.further?.blockSize ?? null;
  return [
    button('measure', `Measure ${path.name}`, () => send('measure', {path: path.name}), {class: 'main', disabled: busy}),
    size === null ? null : button('apart', `Measure again at a block of ${size}, to tell the causes apart`, () => send('apart', {path: path.name}), {class: 'wide', disabled: busy}),
    path.reading?.openArrival ? ['first', 'strongest'].map(arrival => button(`arrival-${arrival}`, `Measure again: the ${arrival} arrival is the path`, () => send('measure', {path: path.name, arrival}), {class: 'wide', disabled: busy})) : null,
    button('measure-all', 'Measure all paths', () => send('measure'), {disabled: busy}),
    button('check', 'Check the patch', () => send('check', {path: path.name}), {disabled: busy}),
    button('watching', watching ? 'Watching is on: turn it off' : 'Watch the show: plays nothing', () => send(watching ? 'stop' : 'watch'), {class: 'wide', disabled: busy && !watching, 'aria-pressed': String(watching)})];
}

export const practice = (state, send) => make('label', {class: 'practice'}, 'Practise: wrong with the simulated rig',
  make('select', {id: 'fault', disabled: state.doing.step !== 'idle', onchange: event => send('practise', {fault: event.target.value})},
    state.options.faults.map(fault => make('option', {value: fault.fault, selected: fault.fault === state.options.fault}, fault.told))));

export function details(path) {
  const reading = path.reading;
  const parts = [];
  if (reading) {
    parts.push(make('h2', {}, `${path.name}: what was heard`), make('p', {class: 'line'}, reading.line));
    if (reading.causes.length) {
      parts.push(make('h3', {}, 'Likely causes, and what to check'), list(reading.causes, 'causes'));
    }
    if (reading.further) {
      parts.push(make('h3', {}, 'To tell them apart'), make('p', {}, reading.further.text));
    }
    reading.findings.forEach(finding => parts.push(make('p', {class: 'finding'}, finding.text, finding.hint ? [make('br'), `Try: ${finding.hint}`] : '')));
    if (reading.aspects.length) {
      parts.push(make('h3', {}, 'Aspects'), make('ul', {class: 'aspects'}, reading.aspects.map(one =>
        make('li', {}, shape(one.standing), make('span', {}, make('strong', {}, one.name), ` ${one.text}`)))));
    }
    if (reading.arrivals.length) {
      parts.push(make('h3', {}, 'Other arrivals, after the first'), list(reading.arrivals));
    }
    if (reading.bands.length) {
      parts.push(fold('bands', 'By octave', table(['Octave', 'Delay', 'Level'], reading.bands.map(band => [band.centre, band.delay, band.level]))));
    }
  }
  parts.push(fold('stages', 'Stage by stage, predicted', table(['Stage', 'Delay'], path.forecast.pieces.map(piece => [piece.name, piece.figure]))));
  if (path.forecast.picture) {
    parts.push(make('h3', {}, 'Sound against picture'),
      reading?.picture ? make('p', {}, `As measured: ${reading.picture}`) : null,
      make('p', {class: reading?.picture ? 'quiet' : ''}, `Predicted: ${path.forecast.picture.told}`));
  }
  if (path.past) {
    if (path.past.before) {
      parts.push(make('h3', {}, 'Now, against before the show'), make('p', {}, path.past.before));
    }
    parts.push(make('h3', {}, 'From the journal'), list(path.past.steps),
      table(['When', 'Show', 'Part', 'Delay', 'Outcome'], path.past.rows.map(row => [row.at, row.show, row.when, row.figure, row.outcome])));
  }
  return parts;
}

const table = (heads, rows) => make('div', {class: 'scroll', tabindex: 0, role: 'region', 'aria-label': heads.join(', ')}, make('table', {},
  make('thead', {}, make('tr', {}, heads.map(head => make('th', {scope: 'col'}, head)))),
  make('tbody', {}, rows.map(row => make('tr', {}, row.map((cell, i) => make(i === 0 ? 'th' : 'td', i === 0 ? {scope: 'row'} : {}, cell)))))));

export function keeping(state, may, send) {
  const keep = state.keeping;
  const idle = state.doing.step === 'idle';
  const order = when => () => send('keep', {when, show: document.getElementById('show')?.value ?? ''});
  return [
    make('h2', {}, 'Keep and report'),
    may === 'agree' ? [
      make('label', {}, 'Show', make('input', {id: 'show', value: keep.show ?? '', maxlength: 120, autocomplete: 'off', placeholder: 'for example Harbour, Friday'})),
      make('p', {class: 'buttons'}, ['before', 'during', 'after'].map(when =>
        button(`keep-${when}`, `Keep as ${when}`, order(when), {disabled: !idle || keep.waiting === 0}))),
      make('p', {class: 'quiet'}, keep.waiting === 0 ? 'No reading waits to be kept.' : keep.waiting === 1 ? '1 reading is not kept yet.' : `${keep.waiting} readings are not kept yet.`)] : null,
    keep.told ? make('p', {id: 'kept', class: keep.failed ? 'trouble' : 'kept'}, shape(keep.failed ? 'bad' : 'good'), make('span', {}, keep.told)) : null,
    keep.reports ? make('p', {}, make('a', {id: 'report', class: 'button', href: 'report', target: '_blank', rel: 'noopener'}, 'Open the report')) : null];
}

export function whatIf(state, asked, answer, ask) {
  const options = state.options;
  const choice = (id, label, value, items, none) => make('label', {}, label,
    make('select', {id, onchange: event => ask(id.slice(3), event.target.value)},
      make('option', {value: ''}, none), items.map(item => make('option', {value: item[0], selected: String(item[0]) === value}, item[1]))));
  return [
    make('h2', {}, 'What if'),
    make('div', {class: 'choices'},
      options.blockSize === null ? null : choice('if-block', 'Block size', asked.block, options.blockSizes.map(size => [size, `${size}`]), `as it is, ${options.blockSize}`),
      choice('if-rate', 'Sample rate', asked.rate, options.sampleRates.map(rate => [rate, `${rate / 1000} kHz`]), `as it is, ${options.sampleRate / 1000} kHz`),
      choice('if-without', 'Without', asked.without, options.stages.map(stage => [stage, stage]), 'no stage out')),
    answer?.failed ? make('p', {class: 'trouble'}, shape('bad'), make('span', {}, answer.failed)) : null,
    answer && !answer.failed ? [
      make('p', {class: 'if'}, make('strong', {}, `${answer.told}.`)),
      list(answer.paths.map(path => `${path.name}: ${path.ms}, ${path.told}`), 'plain'),
      answer.choices.length ? [make('h3', {}, 'The plan\'s best settings'), list(answer.choices)] : null,
      button('if-none', 'Back to the rig as it is', () => ask('', ''))] : null];
}

export const together = state => state.mixes.length ? [
  make('h2', {}, 'Heard together'),
  state.mixes.map(mix => [make('h3', {}, mix.name), list(mix.meetings.map(meets)), list(mix.advice)])] : null;

const meets = meeting =>
  meeting.measured === null ? make('p', {}, `Predicted: ${meeting.predicted}`)
    : meeting.measured.endsWith(meeting.predicted) ? make('p', {}, meeting.measured, make('span', {class: 'quiet'}, ' As predicted.'))
      : [make('p', {}, meeting.measured), make('p', {class: 'quiet'}, `Predicted: ${meeting.predicted}`)];

/** Lines of a table without the margin that all of them have. */
function flush(lines) {
  const margin = Math.min(...lines.filter(line => line.trim()).map(line => line.search(/\S/)));
  return lines.map(line => line.slice(margin)).join('\n');
}

export const patch = (state, now) => state.patch ? [
  make('h2', {}, 'Patch'),
  make('p', {class: `word ${state.patch.standing}`}, shape(state.patch.standing), make('span', {}, state.patch.text)),
  make('pre', {tabindex: 0, 'aria-label': 'What was heard'}, flush(state.patch.lines)),
  make('p', {class: 'quiet'}, `Checked ${age(state.patch.atMs, now)}, at ${clock(state.patch.atMs)}`)] : null;

export const notes = state => state.notes.length ? [make('h2', {}, 'In the chain file'), list(state.notes)] : null;
