// Nest 12 ships ES modules only and jest on Node 20 cannot require them, so both our TypeScript and @nestjs go through swc.
const swc = (parser, transform) => [
  '@swc/jest',
  {
    jsc: { parser, transform, target: 'es2022', keepClassNames: true },
    module: { type: 'commonjs' },
    sourceMaps: 'inline',
  },
];
const typescript = swc(
  { syntax: 'typescript', decorators: true },
  { legacyDecorator: true, decoratorMetadata: true },
);
const javascript = swc({ syntax: 'ecmascript' }, {});

const shared = {
  rootDir: '.',
  testEnvironment: 'node',
  moduleFileExtensions: ['js', 'ts', 'json'],
  moduleNameMapper: { '^(\\.{1,2}/.*)\\.js$': '$1' },
  transform: { '^.+\\.ts$': typescript, 'node_modules/.+\\.js$': javascript },
  transformIgnorePatterns: [
    '/node_modules/(?!(@nestjs|uuid|temporal-polyfill|temporal-utils|geographiclib-geodesic|canonicalize|@marcbachmann|@seriousme|ajv-draft-04|ajv|yaml|metar-taf-parser|p-limit|yocto-queue|glpk\\.js)/)',
  ],
  testPathIgnorePatterns: ['/node_modules/', '/dist/'],
};

module.exports = {
  ...shared,
  testRegex: '\\.spec\\.ts$',
  // One PostgreSQL for the whole run, started when the first suite asks for it.
  globalSetup: '<rootDir>/test/support/database-setup.cjs',
  globalTeardown: '<rootDir>/test/support/database-teardown.cjs',
  testTimeout: 30_000,
  // Suites wait for the database and the browser as much as they compute: a worker per core is not too many.
  maxWorkers: '100%',
  reporters: ['default', '<rootDir>/test/support/closing-line.cjs'],
};
