// The layers of the data path, first to last. A folder may import itself and folders before it.
const layers = [
  'math',
  'sensors',
  'orientation',
  'body',
  'swings',
  'coaching',
  'analysis',
  'practice',
  'sessions',
  'streaming',
  'sending',
  'dashboard',
  'hub',
  'main',
];
const pure =
  '^src/(math|orientation|body|swings|coaching|analysis|sensors/(decode|clock|[^/]+\\.ts$))';

const upwardsOnly = layers.slice(0, -1).map((layer, i) => ({
  name: `${layer}-imports-upwards-only`,
  severity: 'error',
  from: { path: `^src/${layer}/` },
  to: { path: `^src/(${layers.slice(i + 1).join('|')})/` },
}));

module.exports = {
  forbidden: [
    { name: 'no-cycles', severity: 'error', from: {}, to: { circular: true } },
    ...upwardsOnly,
    {
      name: 'pure-takes-no-package',
      comment: 'ahrs is arithmetic only; its guard is the one exception',
      severity: 'error',
      from: { path: pure, pathNot: '^src/orientation/ahrsFilter\\.ts$' },
      to: { dependencyTypes: ['core', 'npm', 'npm-dev', 'npm-optional', 'npm-no-pkg'] },
    },
    {
      name: 'pure-takes-no-edge',
      severity: 'error',
      from: { path: pure },
      to: { path: '^src/sensors/sources/' },
    },
    {
      name: 'rxjs-only-in-practice',
      severity: 'error',
      from: { path: '^src', pathNot: '^src/practice/' },
      to: { path: 'node_modules/rxjs' },
    },
    {
      name: 'noble-only-in-ble',
      severity: 'error',
      from: { path: '^src', pathNot: '^src/sensors/sources/ble/' },
      to: { path: 'noble' },
    },
    {
      name: 'browser-takes-pure-and-the-contract',
      severity: 'error',
      from: { path: '^src/dashboard/' },
      to: {
        path: '^src/(practice|sessions|sending|hub|main|sensors/sources/(ble|replay|synthetic))|^src/streaming/(?!contract|sessionsContract|planContract|todayContract|secondScreenContract|hubContract|apiTexts|fieldRefusals)',
      },
    },
  ],
  options: {
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^dist' },
  },
};
