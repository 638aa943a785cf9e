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

// The links of the stations that this device keeps (shelf.js), the last changed first. A link closes
// with its own check digits, so what was written only in part is refused when it is opened.
export function keptLinks() {
  try {
    return Object.keys(localStorage).filter((key) => key.startsWith(`${prefix}station:`))
      .map((key) => localStorage.getItem(key)).sort().reverse().map((text) => text.split(' ').pop());
  } catch {
    return [];
  }
}

// Units belong to the person and the device, never to the link.
export function preferredUnits() {
  const chosen = recall('units');
  if (chosen === 'inch' || chosen === 'mm') return chosen;
  return navigator.language === 'en-US' ? 'inch' : 'mm';
}

export const preferredTheme = () => (recall('theme') === 'dusk' ? 'dusk' : 'sun');
