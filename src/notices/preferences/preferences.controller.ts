import { Body, Controller, Get, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { IfMatch } from '../../platform/http/index.js';
import { PreferencesBody, PreferencesView } from './preferences.dto.js';
import { PreferencesService } from './preferences.service.js';

/** Which of one's notices come by mail, and when. */
@ApiTags('notices')
@Controller('notice-preferences')
export class PreferencesController {
  constructor(private readonly preferences: PreferencesService) {}

  @Get()
  @ApiRoute({
    id: 'readNoticePreferences',
    summary: 'Which of my notices come by mail, and when',
    answer: PreferencesView,
    refuses: [],
  })
  find(@CurrentUser() user: SignedIn): Promise<PreferencesView> {
    return this.preferences.find(user);
  }

  @Put()
  @ApiRoute({
    id: 'setNoticePreferences',
    summary: 'Say which of my notices come by mail, and when',
    answer: PreferencesView,
    refuses: [412, 422, 428],
  })
  replace(
    @CurrentUser() user: SignedIn,
    @Body() body: PreferencesBody,
    @IfMatch() version: number,
  ): Promise<PreferencesView> {
    return this.preferences.replace(user, body, version);
  }
}
