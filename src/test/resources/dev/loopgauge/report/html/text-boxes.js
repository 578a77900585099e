// Looks at the box of each line of text that is shown; one line for each that is cut, lies outside
// its page or plot, or overlaps another.
const SLACK = 1;
const faults = [];
const boxes = [];
const width = document.documentElement.clientWidth;

function add(text, box, frame) {
  if (box.width === 0 || box.height === 0) {
    return;
  }
  if (
    box.left < frame.left - SLACK ||
    box.right > frame.right + SLACK ||
    box.top < frame.top - SLACK ||
    box.bottom > frame.bottom + SLACK
  ) {
    faults.push("outside: " + text);
  }
  boxes.push({ text, left: box.left, right: box.right, top: box.top, bottom: box.bottom });
}

if (document.documentElement.scrollWidth > width) {
  faults.push("wider than the screen: " + document.documentElement.scrollWidth);
}
const page = { left: 0, right: width, top: -Infinity, bottom: Infinity };
const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
while (walker.nextNode()) {
  const node = walker.currentNode;
  const text = node.textContent.trim().slice(0, 60);
  const parent = node.parentElement;
  if (text === "" || parent.closest("title, desc, style")) {
    continue;
  }
  if (parent.closest("details:not([open])") && !parent.closest("summary")) {
    continue; // folded
  }
  const plot = parent.closest("svg");
  if (plot) {
    add(text, parent.getBoundingClientRect(), plot.getBoundingClientRect());
    continue;
  }
  const range = document.createRange();
  range.selectNodeContents(node);
  for (const box of range.getClientRects()) {
    add(text, box, page);
  }
  for (let e = parent; e; e = e.parentElement) {
    if (getComputedStyle(e).overflowX !== "visible" && e.scrollWidth > e.clientWidth + SLACK) {
      faults.push("cut: " + text);
    }
  }
}

boxes.sort((a, b) => a.top - b.top);
for (let i = 0; i < boxes.length; i++) {
  const a = boxes[i];
  for (let j = i + 1; j < boxes.length && boxes[j].top < a.bottom - SLACK; j++) {
    const b = boxes[j];
    if (Math.min(a.right, b.right) - Math.max(a.left, b.left) > SLACK && b.bottom - a.top > SLACK) {
      faults.push("overlap: " + a.text + " | " + b.text);
    }
  }
}
if (boxes.length < 10) {
  faults.push("only " + boxes.length + " texts seen");
}
return faults;
