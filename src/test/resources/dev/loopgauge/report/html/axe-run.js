// Runs the accessibility checker over the page; one line for each fault.
const done = arguments[arguments.length - 1];
axe.run(document, { resultTypes: ["violations"] }).then(
  (found) =>
    done(
      found.violations.flatMap((fault) =>
        fault.nodes.map((node) => fault.id + ": " + fault.help + ": " + node.html.slice(0, 200)),
      ),
    ),
  (failed) => done(["failed: " + failed]),
);
