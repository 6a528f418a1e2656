import { useEffect } from 'react';
import { usePlanner } from '../state/planner.tsx';

/** Sets the page light or dark, as chosen or as the system is. */
export function useTheme(): void {
  const { settings, backend } = usePlanner();
  const { theme } = settings;
  useEffect(() => {
    void backend.desktop?.desktop.setTheme({ theme });
    const system = window.matchMedia('(prefers-color-scheme: dark)');
    const apply = () => {
      document.documentElement.dataset.theme = theme === 'system' ? (system.matches ? 'dark' : 'light') : theme;
    };
    apply();
    system.addEventListener('change', apply);
    return () => system.removeEventListener('change', apply);
  }, [theme, backend]);
}
