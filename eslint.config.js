import tseslint from 'typescript-eslint';

const pure = [
  'math',
  'sensors/*.ts',
  'sensors/decode',
  'sensors/clock',
  'orientation',
  'body',
  'swings',
  'coaching',
  'analysis',
].map((f) => (f.endsWith('.ts') ? `src/${f}` : `src/${f}/**/*.ts`));

export default tseslint.config(
  { ignores: ['dist', 'node_modules', 'coverage', 'recordings', 'firmware-notes'] },
  ...tseslint.configs.recommended,
  {
    files: ['src/**/*.ts', 'src/**/*.tsx', 'tests/**/*.ts'],
    rules: {
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
      eqeqeq: 'error',
      'no-console': 'error',
    },
  },
  {
    files: pure,
    rules: {
      'no-restricted-globals': [
        'error',
        'Date',
        'performance',
        'setTimeout',
        'setInterval',
        'process',
        'window',
        'document',
        'console',
        'fetch',
      ],
      'no-restricted-properties': [
        'error',
        {
          object: 'Math',
          property: 'random',
          message: 'Pure folders are deterministic: pass a seeded generator in.',
        },
      ],
    },
  },
  { files: ['src/main/**/*.ts', 'tests/**/*.ts', '.build/**'], rules: { 'no-console': 'off' } },
);
