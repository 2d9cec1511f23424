/** The look of the page on this device: light, or dark where the user wants it. */

export const isDark = (): boolean => document.documentElement.dataset['theme'] === 'dark';

/** Sets and keeps the look of the page on this device. */
export function setTheme(theme: 'light' | 'dark'): void {
  document.documentElement.dataset['theme'] = theme;
  try {
    localStorage.setItem('theme', theme);
  } catch {
    // A window without storage keeps the look until it is closed.
  }
}
