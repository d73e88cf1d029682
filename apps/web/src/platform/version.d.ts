interface ImportMetaEnv {
  /** Put in by the build; missing under a test runner. */
  readonly GLANDKEEPER_VERSION?: string
}
