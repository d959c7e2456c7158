import { Body, Controller, Get, Patch } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../accounts/current-user.js';
import { Roles } from '../accounts/roles.js';
import { ApiRoute } from '../platform/http/api-route.js';
import { IfMatch } from '../platform/http/versions.js';
import { ClubChanges, ClubView } from './club.dto.js';
import { ClubsService } from './clubs.service.js';

/** The club itself. */
@ApiTags('club')
@Controller('club')
export class ClubsController {
  constructor(private readonly clubs: ClubsService) {}

  @Get()
  @ApiRoute({ id: 'readClub', summary: 'Your club', answer: ClubView })
  read(@CurrentUser() user: SignedIn): Promise<ClubView> {
    return this.clubs.read(user);
  }

  @Patch()
  @Roles('administrator')
  @ApiRoute({
    id: 'editClub',
    summary: 'Change your club',
    answer: ClubView,
    refuses: [403, 409, 412, 422, 428],
  })
  edit(
    @CurrentUser() user: SignedIn,
    @IfMatch() version: number,
    @Body() changes: ClubChanges,
  ): Promise<ClubView> {
    return this.clubs.edit(user, version, changes);
  }
}
