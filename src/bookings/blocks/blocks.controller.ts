import { Body, Controller, Param, Patch, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { IfMatch, UuidPipe } from '../../platform/http/index.js';
import { BlockDto, BookingDto } from '../booking.dto.js';
import { BlockedDto, EditBlockDto } from './blocks.dto.js';
import { BlocksService, type Blocked } from './blocks.service.js';

/** Time in which an aircraft is not for flying. It is given back like a booking: POST /bookings/{id}/cancel. */
@ApiTags('bookings')
@Controller('bookings/blocks')
export class BlocksController {
  constructor(private readonly blocks: BlocksService) {}

  @Post()
  @Roles('maintenance-coordinator', 'administrator')
  @ApiRoute({
    id: 'blockAircraft',
    summary: 'Takes an aircraft off the calendar for maintenance or club use',
    answer: BlockedDto,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  async add(@CurrentUser() user: SignedIn, @Body() block: BlockDto): Promise<BlockedDto> {
    return shown(await this.blocks.add(user, block), user);
  }

  @Patch(':id')
  @Roles('maintenance-coordinator', 'administrator')
  @ApiRoute({
    id: 'editBlock',
    summary: 'Moves a block, makes it longer or shorter, or says otherwise what it is for',
    answer: BlockedDto,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  async edit(
    @CurrentUser() user: SignedIn,
    @Param('id', UuidPipe) id: string,
    @IfMatch() ifMatch: number,
    @Body() edit: EditBlockDto,
  ): Promise<BlockedDto> {
    return shown(await this.blocks.edit(user, { id, ifMatch, edit }), user);
  }
}

const shown = ({ row, displaced }: Blocked, user: SignedIn): BlockedDto => ({
  ...BookingDto.from(row, user),
  displaced,
});
