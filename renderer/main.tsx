import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import 'leaflet/dist/leaflet.css';
import './look/tokens.css';
import './look/base.css';
import './look/round.css';
import './look/winds.css';
import './look/map.css';
import './look/views.css';
import './look/bag.css';
import './look/import.css';
import './look/draw.css';
import './look/course-panels.css';
import './look/about.css';
import './look/fieldwork.css';
import './look/practice.css';
import './look/review.css';
import { connect } from './client/client.ts';
import { App } from './shell/app.tsx';
import { StartTrouble } from './shell/start-trouble.tsx';
import { PlannerProvider } from './state/planner.tsx';

const root = createRoot(document.getElementById('app')!);
const backend = connect();
const queries = new QueryClient({
  defaultOptions: { queries: { retry: false, staleTime: Number.POSITIVE_INFINITY, refetchOnWindowFocus: false } },
});

async function start(): Promise<void> {
  const [settings, notes] = await Promise.all([backend.call.getSettings({}), backend.call.getStartNotes({})]);
  if (!settings.ok) {
    root.render(<StartTrouble problems={settings.problems} onRetry={() => void start()} />);
    return;
  }
  root.render(
    <StrictMode>
      <QueryClientProvider client={queries}>
        <PlannerProvider backend={backend} initial={settings.value}>
          <App startNotes={notes.ok ? notes.value.notes : notes.problems.map(problem => problem.message)} />
        </PlannerProvider>
      </QueryClientProvider>
    </StrictMode>,
  );
}

void start();
