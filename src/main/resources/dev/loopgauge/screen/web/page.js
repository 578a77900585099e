// Makes elements. Text is always set as text, so that no name can become markup.

const SVG = 'http://www.w3.org/2000/svg';

function fill(element, attributes, children) {
  for (const [name, value] of Object.entries(attributes)) {
    if (name.startsWith('on')) {
      element.addEventListener(name.slice(2), value);
    } else if (value === true) {
      element.setAttribute(name, '');
    } else if (value !== false && value !== null && value !== undefined) {
      element.setAttribute(name, value);
    }
  }
  element.append(...children.flat(Infinity).filter(child => child !== null && child !== undefined));
  return element;
}

export const make = (name, attributes = {}, ...children) =>
  fill(document.createElement(name), attributes, children);

export const draw = (name, attributes = {}, ...children) =>
  fill(document.createElementNS(SVG, name), attributes, children);

/** What stands in each part now, so that what stays the same is left alone. */
const shown = new Map();

/** Puts new content into a part of the page where it differs; the focus stays where it was. */
export function put(id, input, content) {
  const key = JSON.stringify(input);
  if (shown.get(id) === key) {
    return;
  }
  shown.set(id, key);
  const part = document.getElementById(id);
  const focused = part.contains(document.activeElement) ? document.activeElement.id : '';
  part.replaceChildren(...[content()].flat(Infinity).filter(child => child));
  if (focused) {
    document.getElementById(focused)?.focus({preventScroll: true});
  }
}

const SHAPES = {
  'good': 'M8 1a7 7 0 1 0 .01 0z',
  'bad': 'M8 1 15.5 15H.5z',
  'undecided': 'M8 0l8 8-8 8-8-8z',
  'not-judged': 'M8 1a7 7 0 1 0 .01 0zM8 4a4 4 0 1 1-.01 0z',
};

/** The shape of a standing: a disc, a triangle, a diamond or a ring. */
export const shape = standing =>
  draw('svg', {class: `shape ${standing}`, viewBox: '0 0 16 16', 'aria-hidden': 'true'},
    draw('path', {d: SHAPES[standing] ?? SHAPES['not-judged'], 'fill-rule': 'evenodd'}));

/** How long ago something was, in words. */
export function age(atMs, nowMs) {
  const seconds = Math.max(0, Math.round((nowMs - atMs) / 1000));
  if (seconds < 10) {
    return 'just now';
  }
  if (seconds < 90) {
    return `${Math.floor(seconds / 10) * 10} s ago`;
  }
  const minutes = Math.round(seconds / 60);
  return minutes < 90 ? `${minutes} min ago` : `${Math.round(minutes / 60)} h ago`;
}

/** From when to when what is told was measured; null where nothing was. */
export function asOf(sentence, nowMs) {
  if (sentence.fromMs === null) {
    return null;
  }
  const from = clock(sentence.fromMs);
  const to = clock(sentence.toMs);
  return `Measured ${from === to ? `at ${from}` : `from ${from} to ${to}`}, ${age(sentence.fromMs, nowMs)}`;
}

/** The time of day at which something was. */
export const clock = atMs =>
  new Date(atMs).toLocaleTimeString([], {hour: '2-digit', minute: '2-digit', second: '2-digit', hour12: false});
