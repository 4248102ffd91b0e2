/** Whether the app starts with no signal; see `version` in the frame. */
export const OFFLINE_WORDS = {
  preparing: 'Getting ready to work with no signal.',
  ready: 'Ready to work with no signal. Everything stays on this phone until you send it.',
  partly:
    'Some of the app is missing from this phone: with no signal, some screens and files do not open. It is fetched again when there is signal.',
  failed: 'Not ready to start with no signal yet; it is tried again when there is one.',
  unsupported: 'This browser cannot start the app with no signal.',
} as const;
