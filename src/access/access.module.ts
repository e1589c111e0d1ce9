import { Global, Module } from '@nestjs/common';
import { APP_GUARD, DiscoveryModule } from '@nestjs/core';
import { AboutPages } from './about.pages';
import { AccessApi } from './access.api';
import { AccessGuard } from './access.guard';
import { AccountPages } from './account.pages';
import { AuditTrail } from './audit-trail';
import { FormGuard } from './form.guard';
import { RouteList } from './route-list';
import { Sessions } from './sessions';
import { SignInPages } from './sign-in.pages';

/** Accounts, sessions and who may take which route. */
@Global()
@Module({
  imports: [DiscoveryModule],
  controllers: [SignInPages, AccountPages, AccessApi, AboutPages],
  providers: [
    Sessions,
    AuditTrail,
    RouteList,
    // In this order: a form is checked against the session that the first guard found.
    { provide: APP_GUARD, useClass: AccessGuard },
    { provide: APP_GUARD, useClass: FormGuard },
  ],
  exports: [Sessions, AuditTrail],
})
export class AccessModule {}
