// All paths on one time axis: predicted above measured, stage by stage, with each listener's limit.

import {age, draw, make, shape} from './page.js';

const FAR = 2;
const WIDTH = 1000;
const ROW = 34;

/** How long the axis is, in ms: all arrivals, and the limits that aren't far beyond them. */
export function longest(paths) {
  const ends = paths.flatMap(path => [path.forecast.endMs, path.reading?.arrivalMs ?? 0]);
  const most = Math.max(0.1, ...ends);
  const limits = paths.map(path => path.forecast.limitAtMs ?? 0).filter(ms => ms < FAR * most);
  return 1.04 * Math.max(most, ...limits);
}

const STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

function ticks(most) {
  const step = STEPS.find(size => most / size <= 8) ?? 1000;
  const marks = [];
  for (let ms = 0; ms <= most; ms += step) {
    marks.push(Math.round(ms * 100) / 100);
  }
  return marks;
}

const kindClass = kind => `kind-${kind.split(/[ ,]/)[0]}`;

function lane(path, most, whatIf) {
  const x = ms => Math.max(0, Math.min(WIDTH, WIDTH * ms / most)).toFixed(1);
  const wide = (from, to) => Math.max(1.5, x(to) - x(from)).toFixed(1);
  const forecast = whatIf ?? path.forecast;
  const limit = path.forecast.limitAtMs;
  const arrival = path.reading?.arrivalMs;
  const air = path.forecast.pieces.filter(piece => piece.kind === 'air').reduce((sum, p) => sum + p.toMs - p.fromMs, 0);
  return draw('svg', {class: 'lane', viewBox: `0 0 ${WIDTH} ${ROW}`, preserveAspectRatio: 'none', 'aria-hidden': 'true'},
    ticks(most).map(ms => draw('line', {class: 'tick', x1: x(ms), x2: x(ms), y1: 0, y2: ROW})),
    forecast.pieces.map(piece =>
      draw('rect', {class: `${kindClass(piece.kind)} ${whatIf ? 'if' : ''}`, x: x(piece.fromMs), y: 5, width: wide(piece.fromMs, piece.toMs), height: 11})),
    arrival === undefined || arrival === null ? null : [
      draw('rect', {class: `measured ${path.standing}`, x: 0, y: 19, width: wide(0, arrival - air), height: 11}),
      air > 0 ? draw('rect', {class: 'measured-air', x: x(arrival - air), y: 19, width: wide(arrival - air, arrival), height: 11}) : null],
    limit !== null && limit !== undefined && limit <= most
      ? draw('line', {class: 'limit', x1: x(limit), x2: x(limit), y1: 1, y2: ROW - 1}) : null);
}

function scale(most) {
  const marks = ticks(most);
  return make('div', {class: 'scale', 'aria-hidden': 'true'}, marks.map((ms, i) => {
    const mark = make('span', {}, i === marks.length - 1 ? `${ms} ms` : `${ms}`);
    mark.style.left = `${100 * ms / most}%`;
    return mark;
  }));
}

const KINDS = ['converters', 'console', 'host', 'network', 'other stages', 'air'];

function legend(paths) {
  const used = new Set(paths.flatMap(path => path.forecast.pieces.map(piece => kindClass(piece.kind))));
  const key = (name, text) => make('li', {}, draw('svg', {viewBox: '0 0 12 12', class: 'key', 'aria-hidden': 'true'}, draw('rect', {class: name, width: 12, height: 12})), text);
  return make('ul', {class: 'legend'},
    make('li', {}, 'Above: predicted'),
    KINDS.filter(kind => used.has(kindClass(kind))).map(kind => key(kindClass(kind), kind)),
    make('li', {}, 'Below: measured'),
    make('li', {}, draw('svg', {viewBox: '0 0 12 12', class: 'key', 'aria-hidden': 'true'}, draw('line', {class: 'limit', x1: 6, x2: 6, y1: 0, y2: 12})), 'limit'));
}

/** The rows. */
export function rows(paths, chosen, whatIf, choose, now) {
  const forecasts = new Map((whatIf?.paths ?? []).map(path => [path.name, path]));
  const most = longest(whatIf ? [...paths, ...paths.map(p => ({forecast: forecasts.get(p.name) ?? p.forecast}))] : paths);
  return [
    make('h2', {}, whatIf ? 'Who hears what when, if' : 'Who hears what when'),
    make('ol', {class: 'rows'}, paths.map((path, i) => {
      const other = forecasts.get(path.name);
      return make('li', {},
        make('button', {type: 'button', id: `path-${i}`, class: 'row', 'aria-pressed': String(path.name === chosen), onclick: () => choose(path.name)},
          make('span', {class: 'who'}, shape(path.standing), make('span', {class: 'name'}, path.name), make('span', {class: 'quiet'}, path.listener)),
          lane(path, most, other),
          make('span', {class: 'figures'},
            make('span', {class: path.reading?.delay ? 'number' : 'quiet'}, path.reading?.delay ? `${path.reading.delay.ms} ms ${path.reading.delay.plusMinusMs}` : path.word),
            make('span', {class: 'quiet'}, other ? `if so ${other.ms}` : path.reading?.predicted ?? `predicted ${path.forecast.ms}`),
            path.reading ? make('span', {class: 'quiet'}, age(path.reading.atMs, now)) : null),
          make('span', {class: `verdict ${path.standing}`},
            path.reading ? path.word : '',
            make('span', {class: 'quiet'}, (other ? other.told : path.reading ? path.reading.limit : path.forecast.limitAtMs === null ? path.forecast.told : `predicted ${path.forecast.told}`) ?? ''),
            path.forecast.limitAtMs > most ? make('span', {class: 'quiet'}, `limit at ${Math.round(path.forecast.limitAtMs * 100) / 100} ms →`) : null)));
    })),
    make('div', {class: 'underrows'}, make('span', {}), scale(most), make('span', {})),
    legend(paths)];
}
