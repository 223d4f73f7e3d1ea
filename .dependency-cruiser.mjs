/** Who may import whom, types included. Each rule says why in one sentence; `npm run check` holds them. */

const messageCodes = "^views/messages/en\\.json$";

/** @type {import("dependency-cruiser").IConfiguration} */
export default {
  forbidden: [
    {
      name: "no-circular",
      severity: "error",
      comment:
        "Two files that need each other are one file, or hide a third that both need; a circle cannot be read from any end.",
      from: {},
      to: { circular: true },
    },
    {
      name: "calibration-is-pure",
      severity: "error",
      comment:
        "calibration/ is numbers in, numbers out: no file, no port, no clock and no package, so that anyone can check it with pencil and paper. It knows the codes of its messages as a type.",
      from: { path: "^calibration/" },
      to: { pathNot: ["^calibration/", messageCodes] },
    },
    {
      name: "drivers-stand-alone",
      severity: "error",
      comment:
        "drivers/ turn cables into readings and know nothing of benches, records or pages; a driver must run on its own in `underhook listen`.",
      from: { path: "^drivers/" },
      to: { path: "^(server|views|test)/", pathNot: messageCodes },
    },
    {
      name: "views-touch-nothing",
      severity: "error",
      comment: "views/ only draw what they are given: no port, no ledger, no route, no file.",
      from: { path: "^views/" },
      to: { path: ["^drivers/", "^server/(ledger|web|cli)/", "node_modules/(fastify|kysely|pg)/"] },
    },
    {
      name: "views-read-no-file",
      severity: "error",
      comment: "views/ only draw what they are given: no port, no ledger, no route, no file.",
      from: { path: "^views/" },
      to: { dependencyTypes: ["core"] },
    },
    {
      name: "views-own-their-types",
      severity: "error",
      comment:
        "views/ own the types of what they draw and server/web fills them, so that a page can be drawn and changed without the server.",
      from: { path: "^views/" },
      to: { path: "^server/" },
    },
    {
      name: "nouns-are-pure",
      severity: "error",
      comment:
        "The same density under the same rule must give the same finding anywhere, so metals, conformity and checks touch no cable, page or file; what their entries hold is written in the shapes of the ledger.",
      from: { path: "^server/(metals|conformity|checks|methods|weighing/checks)/" },
      to: {
        path: [
          "^drivers/",
          "^server/(ledger|web|station|cli)/",
          "^views/",
          "node_modules/(fastify|kysely|pg)/",
        ],
        pathNot: [messageCodes, "^server/ledger/shapes\\.ts$"],
      },
    },
    {
      name: "nouns-read-no-file",
      severity: "error",
      comment:
        "The same density under the same rule must give the same finding anywhere, so metals, conformity and checks touch no cable, page or file.",
      from: { path: "^server/(metals|conformity|checks|methods|weighing/checks)/" },
      to: { dependencyTypes: ["core"] },
    },
    {
      name: "decisions-are-pure",
      severity: "error",
      comment:
        "A weighing and a lot decide from what they are told and know no store, no cable and no page, so that every door gets the same answer.",
      from: { path: "^server/(weighing|lots)/" },
      to: { path: ["^drivers/", "^server/(station|web|cli)/", "^views/"], pathNot: messageCodes },
    },
    {
      name: "the-ledger-only-writes-down",
      severity: "error",
      comment: "The ledger writes down what it is told; it never draws a page and never listens to a cable.",
      from: { path: "^server/ledger/" },
      to: {
        path: ["^drivers/", "^server/(web|station|cli)/", "^views/", "node_modules/fastify/"],
        pathNot: messageCodes,
      },
    },
    {
      name: "text-comes-last",
      severity: "error",
      comment:
        "No sentence is built below the pages, the reports and the command line; all else answers with codes and values.",
      from: { path: "^server/[^/]+/", pathNot: "^server/(web|reports|cli)/" },
      to: { path: "^views/", pathNot: messageCodes },
    },
    {
      name: "nothing-needs-the-routes",
      severity: "error",
      comment:
        "Routes stand at the outside: they call the rest, and only the start of the program knows them.",
      from: { pathNot: ["^server/web/", "^server/[^/]+\\.ts$", "^test/"] },
      to: { path: "^server/web/" },
    },
    {
      name: "nothing-needs-the-command-line",
      severity: "error",
      comment:
        "The commands stand at the outside: they call the rest, and only the start of the program knows them.",
      from: { pathNot: ["^server/cli/", "^server/[^/]+\\.ts$", "^test/"] },
      to: { path: "^server/cli/" },
    },
    {
      name: "no-test-in-the-program",
      severity: "error",
      comment: "What is shipped does not depend on its tests.",
      from: { pathNot: ["^test/", "^vitest\\.config\\.ts$"] },
      to: { path: "^test/" },
    },
    {
      name: "no-tool-in-the-program",
      severity: "error",
      comment: "Who installs the program gets no package that only its developers need.",
      from: { path: "^(calibration|drivers|server|views)/", pathNot: "^server/build.ts$" },
      to: {
        dependencyTypes: ["npm-dev"],
        dependencyTypesNot: ["type-only"],
        pathNot: "node_modules/@types/",
      },
    },
    {
      name: "found",
      severity: "error",
      comment:
        "An import that leads nowhere hides what it would bring with it from every other rule; what is built may not be there yet.",
      from: {},
      to: { couldNotResolve: true, pathNot: "(^|/)dist/" },
    },
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
    doNotFollow: { path: "node_modules" },
    exclude: { path: "^dist/" },
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["import", "require", "node", "default", "types"],
    },
  },
};
