import { createBrowserRouter, redirect } from 'react-router'
import { FaultPage, NotFoundPage } from './fault-page.tsx'
import { Opening, Shell } from './shell.tsx'

/** The shell comes with the first load, every page when somebody goes there: a phone in a cellar waits for little. */
export const router = createBrowserRouter([
  {
    path: '/sign-in',
    ErrorBoundary: FaultPage,
    HydrateFallback: Opening,
    lazy: async () => ({ Component: (await import('../features/people/sign-in-page.tsx')).SignInPage }),
  },
  {
    path: '/problems/:word/:what',
    HydrateFallback: Opening,
    lazy: async () => ({ Component: (await import('../features/problems/problem-page.tsx')).ProblemPage }),
  },
  {
    Component: Shell,
    ErrorBoundary: FaultPage,
    HydrateFallback: Opening,
    children: [
      {
        ErrorBoundary: FaultPage,
        children: [
          { index: true, lazy: async () => ({ Component: (await import('../features/board/board-page.tsx')).BoardPage }) },
          {
            path: 'valves/:tag',
            lazy: async () => ({ Component: (await import('../features/valves/valve-page.tsx')).ValvePage }),
          },
          {
            path: 'valves/:tag/cut-card',
            lazy: async () => ({ Component: (await import('../features/cut-cards/cut-card-page.tsx')).CutCardPage }),
          },
          {
            path: 'valves/:tag/proof',
            lazy: async () => ({ Component: (await import('../features/proof/proof-page.tsx')).ProofPage }),
          },
          {
            path: 'valves/:tag/log',
            lazy: async () => ({ Component: (await import('../features/readings/log-page.tsx')).LogPage }),
          },
          {
            path: 'valves/:tag/leaks',
            lazy: async () => ({ Component: (await import('../features/leak-history/leak-history-page.tsx')).LeakHistoryPage }),
          },
          {
            path: 'valves/:tag/edit',
            lazy: async () => ({ Component: (await import('../features/register/change-valve-page.tsx')).ChangeValvePage }),
          },
          {
            path: 'register',
            lazy: async () => ({ Component: (await import('../features/register/register-page.tsx')).RegisterPage }),
          },
          {
            path: 'register/new-valve',
            lazy: async () => ({ Component: (await import('../features/register/add-valve-page.tsx')).AddValvePage }),
          },
          {
            path: 'register/crews',
            lazy: async () => ({ Component: (await import('../features/crews/crews-page.tsx')).CrewsPage }),
          },
          {
            path: 'register/labels',
            lazy: async () => ({ Component: (await import('../features/labels/labels-page.tsx')).LabelsPage }),
          },
          {
            path: 'register/site',
            lazy: async () => ({ Component: (await import('../features/people/site-page.tsx')).SitePage }),
          },
          {
            path: 'register/settings',
            lazy: async () => ({ Component: (await import('../features/settings/settings-page.tsx')).SettingsPage }),
          },
          {
            path: 'packings',
            lazy: async () => ({ Component: (await import('../features/packings/packings-page.tsx')).PackingsPage }),
          },
          {
            path: 'packings/lives',
            lazy: async () => ({ Component: (await import('../features/packing-lives/lives-page.tsx')).LivesPage }),
          },
          {
            path: 'packings/:family',
            lazy: async () => ({ Component: (await import('../features/packings/family-page.tsx')).FamilyPage }),
          },
          {
            path: 'imports',
            lazy: async () => ({ Component: (await import('../features/imports/imports-page.tsx')).ImportsPage }),
          },
          {
            path: 'imports/:importId',
            lazy: async () => ({ Component: (await import('../features/imports/import-page.tsx')).ImportPage }),
          },
          {
            path: 'rounds',
            lazy: async () => ({ Component: (await import('../features/rounds/rounds-page.tsx')).RoundsPage }),
          },
          {
            path: 'rounds/plan',
            lazy: async () => ({ Component: (await import('../features/round-plans/plan-page.tsx')).PlanPage }),
          },
          {
            path: 'rounds/due',
            lazy: async () => ({ Component: (await import('../features/round-plans/due-page.tsx')).DuePage }),
          },
          {
            path: 'rounds/:roundId',
            lazy: async () => ({ Component: (await import('../features/rounds/round-page.tsx')).RoundPage }),
          },
          {
            path: 'rounds/:roundId/type-in',
            lazy: async () => ({ Component: (await import('../features/round-entry/type-in-page.tsx')).TypeInPage }),
          },
          {
            path: 'repacks',
            lazy: async () => ({ Component: (await import('../features/repacks/repacks-page.tsx')).RepacksPage }),
          },
          {
            path: 'repacks/compare',
            lazy: async () => ({ Component: (await import('../features/repacks/compare-page.tsx')).ComparePage }),
          },
          {
            path: 'repacks/what-if',
            lazy: async () => ({ Component: (await import('../features/repacks/what-if-page.tsx')).WhatIfPage }),
          },
          {
            path: 'repacks/outages',
            lazy: async () => ({ Component: (await import('../features/repacks/outages-page.tsx')).OutagesPage }),
          },
          {
            path: 'repacks/outages/:outageId',
            lazy: async () => ({ Component: (await import('../features/repacks/review-page.tsx')).ReviewPage }),
          },
          {
            path: 'stores',
            lazy: async () => ({ Component: (await import('../features/stores/stores-page.tsx')).StoresPage }),
          },
          {
            path: 'stores/items/:itemId',
            lazy: async () => ({ Component: (await import('../features/stores/item-page.tsx')).ItemPage }),
          },
          {
            path: 'stores/kit',
            lazy: async () => ({ Component: (await import('../features/stores/kit-page.tsx')).KitPage }),
          },
          {
            path: 'find',
            lazy: async () => ({ Component: (await import('../features/find/find-page.tsx')).FindPage }),
          },
          // What a label says: short, and the same wherever the server stands.
          {
            path: 'v/:tag',
            Component: Opening,
            loader: ({ params }) => redirect(`/valves/${encodeURIComponent(params['tag'] ?? '')}/log`),
          },
          {
            path: 'waiting',
            lazy: async () => ({ Component: (await import('../features/waiting/waiting-page.tsx')).WaitingPage }),
          },
          {
            path: 'bench/:calculator?',
            lazy: async () => ({ Component: (await import('../features/bench/bench-page.tsx')).BenchPage }),
          },
          {
            path: 'forecasts',
            lazy: async () => ({ Component: (await import('../features/forecasts/forecasts-page.tsx')).ForecastsPage }),
          },
          {
            path: 'leaks',
            lazy: async () => ({ Component: (await import('../features/leaks/leaks-page.tsx')).LeaksPage }),
          },
          {
            path: 'leaks/repeat',
            lazy: async () => ({ Component: (await import('../features/leaks/repeat-page.tsx')).RepeatPage }),
          },
          {
            path: 'leaks/losses',
            lazy: async () => ({ Component: (await import('../features/leaks/losses-page.tsx')).LossesPage }),
          },
          {
            path: 'leaks/rules',
            lazy: async () => ({ Component: (await import('../features/leak-rules/leak-rules-page.tsx')).LeakRulesPage }),
          },
          {
            path: 'leaks/evidence',
            lazy: async () => ({ Component: (await import('../features/evidence/evidence-page.tsx')).EvidencePage }),
          },
          {
            path: 'log',
            lazy: async () => ({ Component: (await import('../features/log/log-page.tsx')).LogPage }),
          },
          { path: '*', Component: NotFoundPage },
        ],
      },
    ],
  },
])
