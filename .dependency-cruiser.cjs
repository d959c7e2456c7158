/** The architecture, as rules that fail. Each says why. */
module.exports = {
  forbidden: [
    {
      name: 'rules-are-pure',
      comment:
        'A judgement depends on its facts alone: no framework, no database, no other part of the service.',
      severity: 'error',
      from: { path: '^src/rules' },
      to: {
        pathNot: [
          '^src/rules',
          '^node_modules/(temporal-polyfill|temporal-utils|astronomy-engine|geographiclib-geodesic|safe-stable-stringify|@marcbachmann/cel-js)/',
          '^crypto$',
        ],
      },
    },
    {
      name: 'only-the-digest-hashes',
      comment: 'node:crypto is there for SHA-256 of facts; anything random would break replay.',
      severity: 'error',
      from: { path: '^src/rules', pathNot: '^src/rules/engine/digest\\.ts$' },
      to: { path: '^crypto$' },
    },
    {
      name: 'practice-is-pure',
      comment:
        'What a track shows and what is rusty depend on what is given alone: no framework, database, clock or file.',
      severity: 'error',
      from: { path: '^src/practice/(track|tolerances|rust|limits-suggested)/' },
      to: {
        pathNot: [
          '^src/practice/(track|tolerances|rust|limits-suggested)/',
          '^src/rules/(air|calendar|facts|sky)/',
          '^node_modules/(temporal-polyfill|geographiclib-geodesic|fast-xml-parser)/',
        ],
      },
    },
    {
      name: 'log-checks-are-pure',
      comment:
        'What is flagged in a log depends on the entry and the airfields alone: no database, no clock.',
      severity: 'error',
      from: { path: '^src/logbook/checks/' },
      to: {
        pathNot: [
          '^src/logbook/checks/',
          '^src/rules/(air|calendar|facts|parameters|sky)/',
          '^node_modules/geographiclib-geodesic/',
        ],
      },
    },
    {
      name: 'workshop-stays-in-tests',
      comment: 'Example records and case tables are for tests and commands, never for answers to members.',
      severity: 'error',
      from: { path: '^src', pathNot: ['^src/rules/workshop', '^src/cli'] },
      to: { path: '^src/rules/workshop' },
    },
    {
      name: 'decisions-read-all-and-are-read-by-few',
      comment: 'decisions gathers every fact; only what books or oversees may build on it.',
      severity: 'error',
      from: {
        path: '^src',
        pathNot: [
          '^src/(decisions|bookings|standing|maintenance|safety|demo|cli/replay)/',
          '^src/app\\.module\\.ts$',
        ],
      },
      to: { path: '^src/decisions' },
    },
    {
      name: 'demo-only-by-its-command',
      comment: 'Demo data must not be reachable from the service itself.',
      severity: 'error',
      from: { path: '^src', pathNot: ['^src/demo', '^src/main\\.ts$'] },
      to: { path: '^src/demo' },
    },
    {
      name: 'pages-use-the-api',
      comment:
        'The pages know the service through HTTP only; types are allowed, and the catalogue of words, so that there is one.',
      severity: 'error',
      from: { path: '^src/web/page/' },
      to: {
        path: '^src/(?!web/page/)',
        pathNot: '^src/rules/explain/(words|sentences)\\.ts$',
        dependencyTypesNot: ['type-only'],
      },
    },
    {
      name: 'words-are-leaves',
      comment: 'The catalogue of words is built into the pages: it must not bring the engine along.',
      severity: 'error',
      from: { path: '^src/rules/explain/(words|sentences)\\.ts$' },
      to: { pathNot: '^src/rules/explain/(words|sentences)\\.ts$' },
    },
    {
      name: 'no-circles',
      comment: 'A circle cannot be read in any order.',
      severity: 'error',
      from: {},
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    {
      name: 'nothing-from-tests',
      severity: 'error',
      comment: 'The service does not import test code or development packages.',
      from: {
        path: '^(src|migrations)',
        pathNot: ['\\.spec\\.ts$', '^src/web/page', '^src/platform/database/testing'],
      },
      to: { path: '^test', dependencyTypes: ['npm-dev'] },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
    },
  },
};
