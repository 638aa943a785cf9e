// What this device remembers. A convenience only: phones drop it, and it may be switched off.
const prefix = 'hearthsight:';

export function remember(key, value) {
  try {
    localStorage.setItem(prefix + key, value);
    return true;
  } catch {
    return false;  // switched off or full: the link still holds everything
  }
}

export function recall(key) {
  try {
    return localStorage.getItem(prefix + key);
  } catch {
    return null;
  }
}

// Units belong to the person and the device, never to the link.
export function preferredUnits() {
  const chosen = recall('units');
  if (chosen === 'inch' || chosen === 'mm') return chosen;
  return navigator.language === 'en-US' ? 'inch' : 'mm';
}

export const preferredTheme = () => (recall('theme') === 'dusk' ? 'dusk' : 'sun');
