import { comparisonAccounts } from './comparison-accounts.js';
import { furtherAccounts } from './further-accounts.js';
import { lookAccounts } from './look-accounts.js';
import { planAccounts } from './plan-accounts.js';
import { proportionAccounts } from './proportion-accounts.js';
import { stationAccounts } from './station-accounts.js';
import type { StatisticAccount } from './statistic-account.js';
import { timeAccounts } from './time-accounts.js';

/** Statistics in groups, in the order in which the methods page tells them. */
export const statisticAccounts: readonly { readonly title: string; readonly accounts: readonly StatisticAccount[] }[] =
  [
    { title: 'Proportions and rates', accounts: proportionAccounts },
    { title: 'Groups compared', accounts: comparisonAccounts },
    { title: 'Stations, parts and seasons', accounts: stationAccounts },
    { title: 'Times and waiting', accounts: timeAccounts },
    { title: 'Plans and money over years', accounts: planAccounts },
    { title: 'Looks and descriptions', accounts: lookAccounts },
    { title: 'For comparison with others’ work', accounts: furtherAccounts },
  ];
